import { lastScans } from '@/db/queries/scans/lastScans';
import { Camera } from '../_scan/camera';
import { now } from '../_server/clock';
import { enter } from '../_server/enter';
import { LinkButton } from '../_ui/link-button';
import { Page } from '../_ui/page';
import { Section } from '../_ui/section';
import { LastScans } from './last-scans';
import { ScanDesk } from './scan-desk';
import { scanLine } from './scan-line';

export const metadata = { title: 'Scan' };

export default async function ScanPage() {
  const { db, person, session } = await enter('/scan');
  const { workstationId } = session;
  const scans = await lastScans(db, workstationId ? { workstationId } : { personId: person.id });
  const at = now();
  return (
    <Page
      bench
      title="Scan"
      lead="Scan anything: a set, a pack, a piece, a place, a sheet, a load. On this page a scan says what it means and leads nowhere."
      actions={<LinkButton href="/scan/set-up">Try the scanner out</LinkButton>}
    >
      <ScanDesk />
      <Section title="Camera" note="A tablet’s camera reads the same symbols a scanner does.">
        <Camera />
      </Section>
      <Section
        title={workstationId ? 'Last scans at this workstation' : 'Your last scans'}
        note="The newest first. Nothing here is ever changed."
      >
        <LastScans lines={scans.map((scan) => scanLine(scan, at))} />
      </Section>
    </Page>
  );
}
