import type { Build, Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import type { BuildOutcome } from '../../src/enclosure/outcome.ts';
import type { Situation } from '../../src/questions/levers/lever.ts';
import { meanLevel } from '../../src/questions/solved-change.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { buildOutcome, isFailed } from '../../src/search/build-outcome.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { type SolvedBuild, solveBuild } from '../../src/search/solve-build.ts';
import { scenarioFiles, shippedFans } from '../scenarios/shipped.ts';
import { changed } from '../scenarios/two-fans.ts';

const QUIET = '  quiet: { push: empty, pull: s92-15-e x1, exit: p80-26-c x2, rear: 6 mm }\n';
const scanner = `${scenarioFiles.find(({ file }) => file === 'desk-scanner.yaml')?.text ?? ''}${QUIET}`;

/** A build at the speeds that the search finds for it. */
export function solvedFully(enclosure: Enclosure, build: Build): SolvedBuild {
  const plant = plantOf(enclosure);
  return solveBuild(assemble(plant, build), fasterIsCooler(plant));
}

/** The main example with some of its text written differently, and a build of it solved. */
export function solvedScanner(
  changes: Readonly<Record<string, string>>,
  name = 'quiet',
): { readonly situation: Situation; readonly solved: SolvedBuild } {
  const read = readScenario('scanner.yaml', changed(scanner, changes), shippedFans);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { enclosure } = read;
  const build = enclosure.builds.find(({ id }) => id === name)?.options;
  if (!build) throw new Error(`there is no build ${name}`);
  const solved = solvedFully(enclosure, build);
  return { situation: { enclosure, build, outcome: outcomeOf(solved), fans: shippedFans }, solved };
}

/** What comes of a solved build. */
export function outcomeOf(solved: SolvedBuild): BuildOutcome {
  const outcome = buildOutcome(solved);
  if (isFailed(outcome)) throw new Error(outcome.reason);
  return outcome;
}

/** Mean level of the main example with some of its text written differently [dB]. */
export function scannerLevel(changes: Readonly<Record<string, string>>): number {
  return meanLevel(solvedScanner(changes).solved);
}
