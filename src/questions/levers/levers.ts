import { betterContact } from './better-contact.ts';
import { coolerRoom } from './cooler-room.ts';
import { exhaustKeptAway } from './exhaust-kept-away.ts';
import { fanInSeries } from './fan-in-series.ts';
import { largerFan } from './larger-fan.ts';
import { largerField } from './larger-field.ts';
import { largerHoles } from './larger-holes.ts';
import type { Lever } from './lever.ts';
import { moreFans } from './more-fans.ts';
import { narrowerWebs } from './narrower-webs.ts';
import { otherFan } from './other-fan.ts';
import { sealedGap } from './sealed-gap.ts';
import { thickerFan } from './thicker-fan.ts';
import { withoutFilter } from './without-filter.ts';

/** Every lever that is tried, in the order in which equals are told. */
export const levers: readonly Lever[] = [
  largerHoles,
  narrowerWebs,
  largerField,
  withoutFilter,
  sealedGap,
  exhaustKeptAway,
  betterContact,
  otherFan,
  thickerFan,
  largerFan,
  moreFans,
  fanInSeries,
  coolerRoom,
];
