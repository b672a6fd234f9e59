import { eq } from 'drizzle-orm';
import {
  type ConfigurationWork,
  type PlannedLine,
  planConfigurations,
} from '@/lib/exchange/plans/configurations';
import { configurationId, configurationVersionId, lineId } from '@/lib/identity/ids';
import type { VersionContent } from '@/lib/sets/checkVersion';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import { exchangeWords as words } from '@/lib/wording/exchange';
import type { Queries } from '../../client';
import { versionFromRows } from '../../mappers/configuration';
import { itemCodes } from '../../queries/exchange/catalogue-facts';
import { configurationsFacts } from '../../queries/exchange/configurations-facts';
import { configurationLines, configurations, configurationVersions } from '../../schema';
import { addConfiguration } from '../add-configuration';
import { beginConfigurationDraft } from '../begin-configuration-draft';
import { discardConfigurationDraft } from '../discard-configuration-draft';
import { saveConfigurationDraft } from '../save-configuration-draft';
import { type Effect, inside, type ListWork, sentenceOf } from './work';

export const configurationsWork: ListWork<ConfigurationWork> = {
  async known(read) {
    const codes = await itemCodes(read);
    const kinds = await read.select({ code: configurations.code }).from(configurations);
    return { configuration: new Set(kinds.map(({ code }) => code)), item: codes, rack: codes };
  },
  plan: async (read, rows, { now }) => planConfigurations(rows, await configurationsFacts(read, now)),
  async apply(write, outcome, request) {
    const { now, newId, person } = request;
    const db = inside(write);
    const { code, name, layers, lines } = outcome.work;
    let id = outcome.id === null ? null : configurationId.parse(outcome.id);
    const isNew = id === null;
    if (id === null) {
      const added = await addConfiguration({ db, now, newId, person, entry: { code, name } });
      if (!added.ok) return added;
      id = added.value.id;
    }
    const begun = await beginConfigurationDraft({ db, now, newId, person, configurationId: id });
    if (!begun.ok) return begun;
    const draft = await draftOf(write, begun.value.versionId);
    const saved = await saveConfigurationDraft({
      db,
      now,
      person,
      versionId: begun.value.versionId,
      baseRevision: draft.revision,
      entry: {
        ...draft.entry,
        layers,
        lines: withIds(lines, draft.entry.lines, () => lineId.parse(newId('line'))),
      },
    });
    if (!saved.ok) return saved;
    const effect: Effect = {
      did: isNew ? 'added' : 'changed',
      subjectKind: 'configuration',
      subjectId: id,
      name: outcome.name,
      revision: saved.value.revision,
      // a draft that was open before is put back as it was; one that was begun for this is discarded
      before: { versionId: begun.value.versionId, entry: outcome.revision === null ? null : draft.entry },
    };
    return { ok: true, value: [effect] };
  },
  async takeBack(write, effect, { now, person }) {
    const before = effect.before as { versionId: string; entry: Draft | null };
    const versionId = configurationVersionId.parse(before.versionId);
    const [row] = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.id, versionId));
    if (row?.status !== 'draft' || row.approvedAt !== null) return words.draftGone;
    if (row.revision !== effect.revision) return words.changedSince;
    const request = { db: inside(write), now, person, versionId, baseRevision: row.revision };
    const done =
      before.entry === null
        ? await discardConfigurationDraft(request)
        : await saveConfigurationDraft({ ...request, entry: before.entry });
    return done.ok ? null : sentenceOf(done.refusal);
  },
};

/** A draft as its editor would save it. */
interface Draft extends VersionContent {
  note: string | null;
}

async function draftOf(write: Queries, versionId: string): Promise<{ revision: number; entry: Draft }> {
  const [row] = await write
    .select()
    .from(configurationVersions)
    .where(eq(configurationVersions.id, versionId));
  if (!row) throw new Error(`draft ${versionId} was there a moment ago`);
  const lines = await write
    .select()
    .from(configurationLines)
    .where(eq(configurationLines.versionId, versionId));
  const { layers, promises, basketItemId, containerItemId, lines: own } = versionFromRows(row, lines);
  return {
    revision: row.revision,
    entry: { layers, lines: own, promises, basketItemId, containerItemId, note: row.note },
  };
}

/** A line keeps its id where the same item lies in the same place: what a set holds is known by it. */
function withIds(
  lines: readonly PlannedLine[],
  before: readonly ConfigurationLine[],
  newLineId: () => ConfigurationLine['id'],
): ConfigurationLine[] {
  const at = (line: PlannedLine) => `${line.layer} ${line.row} ${line.slot} ${line.itemId}`;
  const known = new Map(before.map((line) => [at(line), line.id]));
  return lines.map((line) => ({ ...line, id: known.get(at(line)) ?? newLineId() }));
}
