import { z } from 'zod';
import {
  type ConfigurationLine,
  type ConfigurationVersion,
  configurationLine,
  draftVersion,
  frozenVersion,
} from '@/lib/sets/configuration';
import { storedStatus } from '@/lib/sets/versionStatus';
import type { configurationLines, configurationVersions } from '../schema';

type VersionRow = typeof configurationVersions.$inferSelect;
type LineRow = typeof configurationLines.$inferSelect;

const anyVersion = z.discriminatedUnion('status', [draftVersion, frozenVersion]);

/** A version's row with its lines' rows, parsed; `status` where the day says another than what is stored. */
export function versionFromRows(
  row: VersionRow,
  lines: readonly LineRow[],
  status: ConfigurationVersion['status'] = storedStatus(row),
): ConfigurationVersion {
  return anyVersion.parse({ ...row, status, lines: lines.map(lineFromRow) });
}

export function lineFromRow(row: LineRow): ConfigurationLine {
  return configurationLine.parse(row);
}

/** Rows to write for the lines of one version. */
export function rowsFromLines(
  versionId: string,
  lines: readonly ConfigurationLine[],
): (typeof configurationLines.$inferInsert)[] {
  return lines.map((line) => ({ ...line, versionId }));
}
