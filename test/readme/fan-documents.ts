import type { Meta } from '../../src/presentation/document.ts';
import { catalogCheckDocument } from '../../src/presentation/fans/catalog-check-view.ts';
import { fanListDocument } from '../../src/presentation/fans/fan-list-view.ts';
import { importDocument } from '../../src/presentation/fans/import-view.ts';
import { stockDocument } from '../../src/presentation/fans/stock-view.ts';
import { fanList } from '../../src/questions/fans/fan-list.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { importFans } from '../../src/reading/shop/import-fans.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';

/** The documents of a list of fans on a path, and of an import of a table with a fault in it. */
export function fanDocuments(family: string, meta: Meta): readonly unknown[] {
  const catalog = readCatalogs([{ file: 'my-fans.yaml', text: family }]);
  const path = { flow: 1e-3, pressure: 1 };
  const wish = { sizes: [], by: 'level', path } as const;
  const listing = fanList(catalog.ok ? catalog.fans : [], wish, SOUND_ASSUMPTIONS);
  const text = 'fan,size mm,depth mm,flow CFM,pressure Pa,level dBA,rpm\na,80,25,32,19,24,2000\nb,80\n';
  const made = importFans({ family: 'fans', lists: [{ file: 'shop.csv', text }], curves: [] });
  return [
    fanListDocument({ ...listing, path }, meta),
    importDocument(made, undefined, meta),
    stockDocument([{ id: 'a', kind: 'perforated', fields: { hole: '4 mm' }, source: 'here' }], meta),
    catalogCheckDocument({ fans: 2, stock: 0 }, meta),
  ];
}
