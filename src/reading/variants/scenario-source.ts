import type { FanModel } from '../../fan/fan-model.ts';
import { readScenario, type ScenarioOutcome } from '../scenario-file.ts';
import type { StockItem } from '../stock/stock-item.ts';
import { MOST_NODES, parseYaml } from '../yaml-source.ts';
import type { Setting } from './settings.ts';

/** What a scenario is read from, for questions that read it again with values written differently. */
export interface ScenarioSource {
  /** Its name, for messages. */
  readonly file: string;
  readonly text: string;
  /** Of the catalog. */
  readonly fans: readonly FanModel[];
  readonly stock?: readonly StockItem[];
}

/**
 * What a scenario file holds as written, units and all; undefined if it is no YAML.
 *
 * @param source file and catalog
 */
export function writtenTree({ file, text }: ScenarioSource): unknown {
  const parsed = parseYaml(file, text, MOST_NODES.scenario);
  return parsed.ok ? parsed.source.value : undefined;
}

/**
 * Reads a scenario with some values written differently, by the same readers and with the same checks.
 *
 * @param source file and catalog
 * @param settings what is written differently
 */
export function readVariant(source: ScenarioSource, settings: readonly Setting[]): ScenarioOutcome {
  return readScenario(source.file, source.text, source.fans, source.stock, settings);
}
