import { benchOperatingPoints } from './operating-points.ts';
import { benchWholeProcess } from './whole-process.ts';

benchOperatingPoints();
benchWholeProcess();
