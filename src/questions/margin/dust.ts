import { isMap } from '../../reading/findings.ts';
import { valueAt } from '../../reading/form-tree.ts';
import type { Path } from '../../reading/problem.ts';
import type { Setting } from '../../reading/variants/settings.ts';

/** Key that tells a filter from other elements. */
const FILTER = 'filter';
const LOADING = 'loading';

/** Paths of all filters of a scenario: elements, and whole elements that may be chosen. */
function filtersIn(written: unknown): readonly Path[] {
  const elements = valueAt(written, ['elements']);
  const choices = valueAt(written, ['choices']);
  const own = Object.entries(isMap(elements) ? elements : {}).flatMap(([id, element]) =>
    isMap(element) && element[FILTER] !== undefined ? [['elements', id]] : [],
  );
  const chosen = Object.entries(isMap(choices) ? choices : {}).flatMap(([id, choice]) => {
    const list = valueAt(choice, ['element']);
    return (Array.isArray(list) ? list : []).flatMap((item: unknown, index) =>
      isMap(item) && item[FILTER] !== undefined ? [['choices', id, 'element', index]] : [],
    );
  });
  return [...own, ...chosen];
}

/**
 * Whether a scenario has filters that dust can load.
 *
 * @param written the scenario file as written
 */
export function hasFilters(written: unknown): boolean {
  return filtersIn(written).length > 0;
}

/**
 * What has to be written differently so that all filters hold dust.
 *
 * @param written the scenario file as written
 * @param loading such as "100 %": due for change
 */
export function loadedFilters(written: unknown, loading: string): readonly Setting[] {
  return filtersIn(written).map((path): Setting => ({ path: [...path, LOADING], value: loading }));
}
