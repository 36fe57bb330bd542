import { benchNetworkSolves } from './network-solves.ts';
import { countNewtonSteps } from './newton-steps.ts';
import { benchOperatingPoints } from './operating-points.ts';
import { benchRivals } from './rivals.ts';
import { benchLadder, benchSpaces } from './space-times.ts';
import { benchWholeProcess } from './whole-process.ts';
import { tellSpaces } from './write-spaces.ts';

/** What may be asked for by name; all but the first if nothing is. */
const sections: Readonly<Record<string, () => void | Promise<void>>> = {
  write: tellSpaces,
  points: benchOperatingPoints,
  network: benchNetworkSolves,
  steps: countNewtonSteps,
  whole: benchWholeProcess,
  spaces: benchSpaces,
  ladder: benchLadder,
  rivals: benchRivals,
};

const asked = process.argv.slice(2);
for (const name of asked.length > 0 ? asked : Object.keys(sections).slice(1)) {
  const section = sections[name];
  if (!section) throw new RangeError(`no section is called ${name}: ${Object.keys(sections).join(', ')}`);
  await section();
}
