/** A family of three fans. All figures are invented. */
export const FAMILY = `# All figures in this file are invented.
family: slim 92
provenance: invented
note: for tests
fans:
  - fan: s92-15-a
    size: 92 mm
    depth: 15 mm
    speed: 2200 rpm
    hold: 25 %
    start: 30 %
    curve:
      flow: 0 10 20 30 40 52 m³/h
      pressure: 24 20 15.5 13 9 0 Pa
    noise:
      - { level: 24 dB(A), speed: 2200 rpm, distance: 1 m }
      - { level: 15 dB(A), speed: 1500 rpm }
    power: 1.4 W
    price: 12
    blades: 7
  - fan: f80-25-b
    size: 80 mm
    depth: 25 mm
    speed: 2000 rpm
    box: { flow: 45 m³/h, pressure: 22 Pa }
    provenance: box
    noise:
      - { power-level: 4.1 B, declared: true }
    power: 1.2 W
  - fan: s92-16-c
    size: 92 mm
    depth: 16 mm
    speed: 1800 rpm
    curve:
      flow: 0 15 30 45 m³/h
      pressure: 16 13 8 0 Pa
    noise: [{ level: 20 dB(A) }]
    power: 0.9 W
`;

/** A scenario that uses every section. All figures are invented. */
export const SCENARIO = `title: Film scanner, desk side, 7 litre
site: { room: 26 °C, altitude: 300 m }
listener: { distance: 1 m, background: 25 dB(A) }
heat:
  - { part: processor, power: 95 W, on: stack, fixed: 0.16 K/W, slope: 0.4 %/K, limit: 85 °C }
  - { part: board, power: 22 W, in: core, limit: { air: 50 °C } }
airway:
  chambers: [core]
  legs:
    - { leg: intake, from: outside, to: core, through: [front, dust, push, stack, pull], recirculation: 5 % }
    - { leg: gap-round-stack, from: outside, to: core, through: [side-gap] }
    - { leg: exhaust, from: core, to: outside, through: [exit, rear] }
elements:
  front: { perforated: 95 x 95 mm, hole: 4 mm, web: 1.5 mm, sheet: 1.5 mm, facing: shroud }
  dust: { screen: 95 x 95 mm, open: 55 %, wire: 0.2 mm }
  stack: { fins: tower, face: 92 x 92 mm, depth: 25 mm, pitch: 2 mm, fin: 0.4 mm, conductivity: 200 W/(m K) }
  side-gap: { slot: 90 x 2 mm }
  push: { bank: fans, face: 92 mm, depth: 16 mm }
  pull: { bank: fans, face: 92 mm, depth: 16 mm, inlet-gap: 3 mm }
  exit: { bank: fans, face: 80 mm, depth: 26 mm }
  rear: { perforated: 160 x 80 mm, hole: 5 mm, web: 2 mm, sheet: 1.5 mm }
choices:
  push: { fans: catalog, count: 1, empty: allowed }
  pull: { fans: [s92-15-a], count: 1, empty: allowed }
  exit: { fans: catalog, count: 1 to 2 }
  rear: { hole: [4 mm, 5 mm, 6 mm] }
duties:
  - { duty: idle, share: 70 %, heat: 30 % }
  - { duty: work, share: 30 %, heat: { board: 50 % } }
  - { duty: hot day, share: 0, heat: 100 %, room: 35 °C }
builds:
  as-built: { push: s92-15-a x1, pull: empty, exit: f80-25-b x2, rear: 5 mm }
readings:
  - { reading: panel on, build: as-built, speed: 100 %, wall: 151 W, room: 23.4 °C, probe: { processor: 61 °C } }
  - { reading: panel off, build: as-built, without: [front, dust], speed: { push: 60 % }, probe: { core: 40 °C } }
margin: 2 K
assume: { sound: { fan-floor: 12, installation: { inlet: { panel: 3 } } }, fan: { derating-direct: 0.85 } }
`;
