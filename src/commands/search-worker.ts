import { workerData } from 'node:worker_threads';
import { readVariant, type ScenarioSource } from '../reading/variants/scenario-source.ts';
import type { Waiting } from '../search/hunt.ts';
import type { Finding } from '../search/look-alone.ts';
import type { Search } from '../search/search.ts';
import { type AskedSearch, searchFor } from './asked-search.ts';

/** What a worker is told once, when it starts. */
export interface Assignment {
  readonly source: ScenarioSource;
  readonly asked: AskedSearch;
}

/** Sets to look at, and the energy to beat. */
export interface Share {
  readonly sets: readonly Waiting[];
  readonly toBeat: number;
}

let search: Search | undefined;

/** The search a worker knows: it begins its own, of which it uses no more than what it knows of the enclosure. */
function ownSearch(): Search {
  if (search) return search;
  // The pool hands over data of its own before ours.
  const [, { source, asked }] = workerData as readonly [unknown, Assignment];
  const read = readVariant(source, []);
  if (!read.ok) throw new Error(`a worker cannot read ${source.file}, which could be read before`);
  search = searchFor(read.enclosure, asked);
  return search;
}

/** Looks at a share of a round. */
export function lookAt({ sets, toBeat }: Share): readonly Finding[] {
  const { look } = ownSearch();
  return sets.map((set) => look(set, toBeat));
}
