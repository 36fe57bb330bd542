import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { bankIn } from '../enclosure/stages.ts';
import type { Meta } from '../presentation/document.ts';

/** Said of every answer that shows fans that do not exist. */
export const INVENTED_MESSAGE = 'Fans of the shipped catalog are invented: read in real ones before you buy.';

/** Whether any fan of these builds is made up. */
function holdsInvented(enclosure: Enclosure, builds: readonly Build[]): boolean {
  return builds.some((build) =>
    enclosure.places.some((_, place) => bankIn(enclosure, build, place)?.fan.provenance === 'invented'),
  );
}

/** A line that says so if fans that do not exist are shown; empty if not. */
export function inventedNote(enclosure: Enclosure, builds: readonly Build[]): string {
  return holdsInvented(enclosure, builds) ? `${INVENTED_MESSAGE}\n` : '';
}

/** The same as a warning of a document. */
export function withInvented(meta: Meta, enclosure: Enclosure, builds: readonly Build[]): Meta {
  if (!holdsInvented(enclosure, builds)) return meta;
  return {
    ...meta,
    warnings: [...(meta.warnings ?? []), { code: 'invented-fans', message: INVENTED_MESSAGE }],
  };
}
