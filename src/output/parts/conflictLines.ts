import type { Finding } from '../../checks/finding.ts';
import type { Section } from '../plan/page.ts';

/** What cannot all be true, each with its place. */
export const conflictLines = (conflicts: readonly Finding[]): readonly Section[] =>
  conflicts.length === 0
    ? []
    : [
        {
          title: 'Conflicts',
          lines: conflicts.map(
            ({ severity, message, code, place: { path, line, column } }) =>
              `${severity}: ${message}; ${path}:${line}:${column} ${code}`,
          ),
        },
      ];
