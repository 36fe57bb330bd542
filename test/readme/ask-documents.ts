import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { frontDocument } from '../../src/presentation/asks/front-data.ts';
import type { Meta } from '../../src/presentation/document.ts';
import { rankDocument } from '../../src/presentation/json.ts';
import { front } from '../../src/search/front/front.ts';
import { rankingOf } from '../../src/search/rank.ts';
import { beginSearch } from '../../src/search/search.ts';
import { whyNot } from '../../src/search/why/why-not.ts';

/** Documents of a front, and of a ranking that tells why a build is not the first. */
export function askDocuments(plain: Enclosure, meta: Meta): readonly unknown[] {
  const enclosure = { ...plain, asks: { price: 1e-3 } };
  const search = beginSearch(plain, { top: 1, gap: 0.01 });
  while (search.step());
  const ranking = rankingOf(search);
  const [named] = enclosure.builds;
  if (!named) throw new Error('the scenario names no build');
  const dear = beginSearch(enclosure, { top: 1, gap: 0.01 });
  return [
    frontDocument(front(plain, { against: 'price', step: 1, most: 2, gap: 0.01 }), meta),
    rankDocument(ranking, meta, undefined, undefined, whyNot(search, ranking.rows, named)),
    rankDocument(ranking, meta, undefined, undefined, whyNot(dear, ranking.rows, named)),
  ];
}
