import type { Topology } from '../../src/airway/topology.ts';
import { newProject, newWorkspace } from './epanet-engine.mjs';
import { DENSITY } from './leg-laws.ts';

/** Resistance a·Q + b·Q|Q| [Pa·s/m³, Pa·s²/m⁶]. */
export interface PlainResistance {
  readonly kind: 'resistance';
  readonly a: number;
  readonly b: number;
}

/** Fan p0·(1 − (Q/Q0)²) [Pa, m³/s]. */
export interface PlainFan {
  readonly kind: 'fan';
  readonly shutOff: number;
  readonly freeDelivery: number;
}

/** A leg simple enough for a program made for water. */
export type PlainLeg = PlainResistance | PlainFan;

/** What EPANET finds. */
export interface WaterSolution {
  /** [m³/s] */
  readonly flows: readonly number[];
  /** [Pa], the room included. */
  readonly pressures: readonly number[];
}

/** Codes of the toolkit: EN_INITSETTING, EN_FLOW and EN_HEAD. */
const INITIAL_SETTING = 5;
const FLOW = 8;
const HEAD = 10;

/** Pascals in one metre of the fluid: heads stand for pressures. */
const PASCALS_PER_METRE = DENSITY * 9.80665;
const VISCOSITY = 1.5e-5;

// Constants as EPANET rounds them (published: its sources types.h, input1.c and hydcoeffs.c). The pipes below are
// sized with the same ones, so that they drop out.
const FOOT = 0.3048;
const LITRES_PER_CUBIC_FOOT = 28.317;
const MINOR_LOSS = 0.02517;
const GRAVITY = 32.2;

/** Cubic feet in one cubic metre, by the rounded constant. */
const CUBIC_FEET = 1000 / LITRES_PER_CUBIC_FOOT;

/** Metres of head per (m³/s)² that EPANET gives a minor loss of 1 in a pipe of a diameter [m]. */
function minorLossPerUnit(diameter: number): number {
  return FOOT * MINOR_LOSS * (FOOT / diameter) ** 4 * CUBIC_FEET ** 2;
}

/** Metres of head per m³/s that EPANET gives laminar flow in a pipe one metre long. */
function laminarPerMetre(diameter: number): number {
  const feet = diameter / FOOT;
  const area = (Math.PI * feet ** 2) / 4;
  const resistance = 1 / FOOT / (2 * GRAVITY * feet * area ** 2);
  return FOOT * 16 * Math.PI * (VISCOSITY / FOOT ** 2) * feet * resistance * CUBIC_FEET;
}

/** A pipe of these losses: a wide one stays laminar, a short one has no friction. */
function pipeLine(name: string, start: string, end: string, { a, b }: PlainResistance): string {
  const diameter = a > 0 ? 2 : 0.1;
  const length = a > 0 ? a / PASCALS_PER_METRE / laminarPerMetre(diameter) : 1e-6;
  const minor = b / PASCALS_PER_METRE / minorLossPerUnit(diameter);
  return [name, start, end, length, 1000 * diameter, 1e-4, minor, 'Open'].join(' ');
}

/** Three points of the parabola, of which EPANET makes the power law that it is. */
function curveLines(name: string, { shutOff, freeDelivery }: PlainFan): readonly string[] {
  const head = shutOff / PASCALS_PER_METRE;
  const points = [
    [0, head],
    [500 * freeDelivery, 0.75 * head],
    [1000 * freeDelivery, 0],
  ];
  return points.map((point) => [name, ...point].join(' '));
}

/** The network as an input file of EPANET: flow in litres a second, heads in metres, no demand. */
function waterNetwork({ chambers, from, to }: Topology, legs: readonly PlainLeg[]): string {
  const node = (chamber: number | undefined) => `n${chamber}`;
  const pipes: string[] = [];
  const pumps: string[] = [];
  const curves: string[] = [];
  legs.forEach((leg, index) => {
    const ends = [node(from[index]), node(to[index])] as const;
    if (leg.kind === 'resistance') pipes.push(pipeLine(`l${index}`, ...ends, leg));
    else {
      pumps.push([`l${index}`, ...ends, 'HEAD', `c${index}`].join(' '));
      curves.push(...curveLines(`c${index}`, leg));
    }
  });
  const junctions = Array.from({ length: chambers - 1 }, (_, index) => `${node(index + 1)} 0 0`);
  const options = `Units LPS\nHeadloss D-W\nViscosity ${VISCOSITY}\nAccuracy 1e-8\nTrials 200`;
  const sections = { JUNCTIONS: junctions, RESERVOIRS: ['n0 0'], PIPES: pipes, PUMPS: pumps, CURVES: curves };
  const body = Object.entries(sections).map(([name, lines]) => `[${name}]\n${lines.join('\n')}\n`);
  return `${body.join('\n')}\n[OPTIONS]\n${options}\n\n[END]\n`;
}

/** A network held open in EPANET. */
export interface WaterNetwork {
  /** Solves with all fans at a share of full speed [-], > 0, from where the last solution ended. */
  readonly solve: (ratio: number) => void;
  /** Flows and pressures of the last solution. */
  readonly read: () => WaterSolution;
  readonly close: () => void;
}

/** EPANET made ready: opens any number of networks, one at a time. */
export async function epanetNetworks(): Promise<
  (topology: Topology, legs: readonly PlainLeg[]) => WaterNetwork
> {
  const workspace = await newWorkspace();
  return (topology, legs) => {
    workspace.writeFile('network.inp', waterNetwork(topology, legs));
    const project = newProject(workspace);
    project.open('network.inp', 'report.txt', 'out.bin');
    project.openH();
    const links = legs.map((_, leg) => project.getLinkIndex(`l${leg}`));
    const pumps = links.filter((_, leg) => legs[leg]?.kind === 'fan');
    const solve = (ratio: number): void => {
      for (const pump of pumps) project.setLinkValue(pump, INITIAL_SETTING, ratio);
      project.initH(0);
      project.runH();
    };
    const read = (): WaterSolution => ({
      flows: links.map((link) => project.getLinkValue(link, FLOW) / 1000),
      pressures: Array.from({ length: topology.chambers }, (_, chamber) => {
        const junction = project.getNodeIndex(`n${chamber}`);
        return project.getNodeValue(junction, HEAD) * PASCALS_PER_METRE;
      }),
    });
    const close = (): void => {
      project.closeH();
      project.close();
    };
    return { solve, read, close };
  };
}

/** EPANET made ready: solves any number of networks at full speed. */
export async function epanet(): Promise<(topology: Topology, legs: readonly PlainLeg[]) => WaterSolution> {
  const open = await epanetNetworks();
  return (topology, legs) => {
    const network = open(topology, legs);
    // It stops at a change of flow of 1e-8, its finest: the second run begins there and takes another step.
    network.solve(1);
    network.solve(1);
    const solution = network.read();
    network.close();
    return solution;
  };
}
