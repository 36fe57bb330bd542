import type { Metres } from '../../quantities/dimensions.ts';
import { millimetres } from '../millimetres.ts';
import type { Lever } from './lever.ts';
import { sheetChange, sheetsIn } from './sheets-in.ts';

/** No web is narrower than this or than the sheet is thick [m] (rule of laser and punch shops). */
const LEAST_WEB: Metres = 0.001;

/** As little metal between the holes as a shop cuts. */
export const narrowerWebs: Lever = {
  name: 'narrower webs',
  eases: 'by flow',
  isFan: false,
  effort: 'cut',
  changes: (situation, strength) =>
    sheetsIn(situation).flatMap((there) => {
      const { sheet } = there;
      const web = Math.max(LEAST_WEB, sheet.sheet);
      if (strength > 1 || web >= sheet.web) return [];
      const what = `webs of ${millimetres(web)} for ${millimetres(sheet.web)}`;
      return sheetChange(situation, there, { ...sheet, web }, what, [
        'more holes to cut, and a sheet that bends more easily.',
      ]);
    }),
};
