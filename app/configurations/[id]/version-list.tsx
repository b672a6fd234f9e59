import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import type { ConfigurationOnFile } from '@/db/queries/configurations';
import styles from '../_parts/configurations.module.css';
import { VERSION_TONES, versionWords } from '../_parts/version-words';

/** Every version with who wrote and who approved it, and the way to set it beside the one before. */
export function VersionList({ configuration }: { configuration: ConfigurationOnFile }) {
  const { id, versions } = configuration;
  return (
    <ul className={styles.versions}>
      {versions.map(({ content, draftedBy, approvedBy, inForceFrom, note }, at) => {
        const before = versions[at + 1]?.content.version;
        return (
          <li key={content.id}>
            <Link
              href={`/configurations/${id}?version=${content.version}`}
            >{`Version ${content.version}`}</Link>
            <Status tone={VERSION_TONES[content.status]} look="plain">
              {versionWords(content.status, inForceFrom)}
            </Status>
            <span className={styles.soft}>
              {`drafted by ${draftedBy?.name ?? 'not stated'}`}
              {content.status === 'draft' ? '' : `, approved by ${approvedBy?.name ?? 'not stated'}`}
              {inForceFrom && content.status !== 'approved' ? `, in force from ${inForceFrom}` : ''}
              {note ? `: ${note}` : ''}
            </span>
            {before === undefined ? null : (
              <Link href={`/configurations/${id}/compare?from=${before}&to=${content.version}`}>
                {`Beside version ${before}`}
              </Link>
            )}
          </li>
        );
      })}
    </ul>
  );
}
