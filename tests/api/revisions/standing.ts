import { draftFromItem } from '@/lib/catalogue/form/draft';
import type { DemoPerson } from '@/seed/hospital/people';
import { type Desk, first, proof, type Rows, seen } from './desk';

const MANAGER = 'person_gwen-sallis';
const LEAD = 'person_hettie-crane';

/** A draft of the next version of a configuration, by the manager. */
async function drafted(desk: Desk, id: string) {
  const manager = await desk.as(MANAGER);
  const path = { id };
  const { versionId } = await manager.done('POST /api/v1/configurations/{id}/draft', { path });
  return { path, ...(await told(desk, id, versionId)) };
}

async function told(desk: Desk, id: string, versionId: string) {
  const manager = await desk.as(MANAGER);
  const { versions } = await manager.done('GET /api/v1/configurations/{id}', { path: { id } });
  const found = versions.find(({ content }) => content.id === versionId);
  if (!found) throw new Error('the draft is not told');
  const { revision, note, content } = found;
  const { layers, lines, promises, basketItemId, containerItemId } = content;
  const entry = { layers, lines, promises, basketItemId, containerItemId, note };
  return { versionId, revision, entry };
}

/** Tried by the lead, who is the second person. */
async function tried(desk: Desk, id: string): Promise<string> {
  const answer = await desk.send('POST', '/api/v1/changes/trials', {
    headers: (await desk.as(LEAD)).headers,
    body: { kind: 'configuration-version', id, change: 'putInForce' },
  });
  const said = (await answer.text()).trim().split('\n').at(-1) ?? '';
  return (JSON.parse(said) as { trialId: string }).trialId;
}

export const STANDING: Rows = {
  'PUT /api/v1/catalogue/items/{id}': async (desk) => {
    const manager = await desk.as(MANAGER);
    const { items } = await manager.done('GET /api/v1/catalogue/items', { query: { kind: 'screw' } });
    const path = { id: first(items, 'screw').id };
    const { item, revision } = await manager.done('GET /api/v1/catalogue/items/{id}', { path });
    const draft = { ...draftFromItem(item as never), nickname: 'Shorty' };
    return { by: MANAGER, path, body: { draft }, revision };
  },
  'PUT /api/v1/configurations/{id}/draft': async (desk) => {
    const { path, versionId, revision, entry } = await drafted(desk, 'configuration_ben');
    const body = { versionId, entry: { ...entry, note: 'The same again.' } };
    return { by: MANAGER, path, body, revision };
  },
  'DELETE /api/v1/configurations/{id}/draft': async (desk) => {
    const { path, versionId, revision } = await drafted(desk, 'configuration_can');
    return { by: MANAGER, path, body: { versionId }, revision };
  },
  'POST /api/v1/configurations/{id}/in-force': async (desk) => {
    const id = 'configuration_lfl';
    const manager = await desk.as(MANAGER);
    const { versions } = await manager.done('GET /api/v1/configurations/{id}', { path: { id } });
    const draft = first(
      versions.filter(({ content }) => content.status === 'draft'),
      'draft of this configuration',
    );
    const versionId = draft.content.id;
    const trialId = await tried(desk, versionId);
    const body = { versionId, from: '2026-01-14', trialId, proof };
    return { by: LEAD, path: { id }, body, revision: draft.revision };
  },
  'POST /api/v1/configurations/{id}/approval-back': async (desk) => {
    const { path, versionId, revision, entry } = await drafted(desk, 'configuration_clo');
    const manager = await desk.as(MANAGER);
    const note = 'To be approved for a later day.';
    await manager.done('PUT /api/v1/configurations/{id}/draft', {
      path,
      body: { versionId, baseRevision: revision, entry: { ...entry, note } },
    });
    const lead = await desk.as(LEAD);
    const { revision: baseRevision } = await told(desk, path.id, versionId);
    await lead.done('POST /api/v1/configurations/{id}/in-force', {
      path,
      body: { versionId, baseRevision, from: '2999-01-01', trialId: await tried(desk, versionId), proof },
    });
    const now = await told(desk, path.id, versionId);
    return { by: LEAD, path, body: { versionId }, revision: now.revision };
  },
  'POST /api/v1/plans/cards/{id}/versions': async (desk) => {
    const { items } = await (await desk.as(MANAGER)).done('GET /api/v1/plans/cards');
    const { id, surgeon, version, body } = first(items, 'card');
    const by = surgeon.id as DemoPerson;
    return { by, path: { id }, body: { card: { ...body, note: 'Another table.' } }, revision: version };
  },
  'POST /api/v1/plans/starts/{id}/versions': async (desk) => {
    const { items } = await (await desk.as(MANAGER)).done('GET /api/v1/plans/starts');
    const { id, owner, version, construct } = first(items, 'start');
    const by = owner.id as DemoPerson;
    // a note would be the case’s own
    const bone = construct.bone === 'poor' ? 'normal' : 'poor';
    const body = { construct: { ...construct, bone } };
    return { by, path: { id }, body, revision: version };
  },
  'PUT /api/v1/plans/procedures/{id}': async (desk) => {
    const { items } = await (await desk.as(MANAGER)).done('GET /api/v1/plans/procedures');
    const { id, name, region, revision } = first(items, 'procedure');
    const body = { name: `${name}, again`, region, inUse: true };
    return { by: MANAGER, path: { id }, body, revision };
  },
  'PUT /api/v1/settings/{key}': async (desk) => {
    const entry = { secondCheck: 'never', lateAfterMinutes: '15' };
    return {
      ...{ by: MANAGER, path: { key: 'bench' } },
      body: { entry, because: 'Tried for a month.' },
      revision: await seen(desk, 'GET /api/v1/settings/{key}', { key: 'bench' }),
    };
  },
  'PUT /api/v1/settings/reason-codes/{id}': async (desk) => {
    const { items } = await (await desk.as(MANAGER)).done('GET /api/v1/settings/reason-codes');
    const { id, revision } = first(items, 'reason');
    return { by: MANAGER, path: { id }, body: { inUse: false }, revision };
  },
};
