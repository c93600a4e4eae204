// The invented ground of the demo project, as functions of kilometers east and north of a corner. Only additions,
// multiplications, divisions and square roots are used, so that every machine makes the same bits.

/** Value noise in -1…1 on a lattice of 1 km, smooth in between. */
function noise(seed) {
  const lattice = (column, row) => {
    let mixed = Math.imul(column, 0x27d4eb2d) ^ Math.imul(row, 0x165667b1) ^ seed;
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
    mixed = Math.imul(mixed ^ (mixed >>> 12), 0x297a2d39);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2147483648 - 1;
  };
  const ease = (share) => share * share * share * (share * (6 * share - 15) + 10);
  return (x, y) => {
    const [column, row] = [Math.floor(x), Math.floor(y)];
    const [east, north] = [ease(x - column), ease(y - row)];
    const south = lattice(column, row) * (1 - east) + lattice(column + 1, row) * east;
    const top = lattice(column, row + 1) * (1 - east) + lattice(column + 1, row + 1) * east;
    return south * (1 - north) + top * north;
  };
}

/** Noise of several sizes, each half as large and half as strong as the one before. */
function rough(seed, octaves) {
  const layers = Array.from({ length: octaves }, (_, index) => noise(seed + 7919 * index));
  return (x, y) => layers.reduce((sum, layer, index) => sum + layer(x * 2 ** index, y * 2 ** index) / 2 ** index, 0);
}

/** 1 at the middle, falling to nothing far from it. */
const hill = (offset) => 1 / (1 + offset * offset) ** 2;

/** Above zero inside an ellipse, below outside. */
const ellipse = (x, y, [east, north, halfWidth, halfLength]) => 1 - ((x - east) / halfWidth) ** 2 - ((y - north) / halfLength) ** 2;

/** Height of an island [m] from how far inside it a place lies and how its hills stand. */
const risen = (inside, hills) => (inside <= 0 ? 0 : (inside / (inside + 0.12)) * hills);

/** Bends a drawing so that its curves look grown: places are looked up a little beside where they lie. */
function bent(seed, reach, height) {
  const [eastward, northward] = [rough(seed + 401, 3), rough(seed + 503, 3)];
  return (x, y) => height(x + reach * eastward(x / 3, y / 3), y + reach * northward(x / 3, y / 3));
}

/** The archipelago: a long island with a ridge, a sound east of it, two small islands, open sea. Height above the sea [m]. */
export function archipelago(seed) {
  const coast = rough(seed, 5);
  const slopes = rough(seed + 101, 6);
  const bend = noise(seed + 211);
  return bent(seed, 0.9, (x, y) => {
    const shore = 0.2 * coast(x / 1.9, y / 1.9);
    const detail = slopes(x / 1.5, y / 1.5);
    const crest = 9.6 + 1.1 * bend(0.5, y / 4);
    const bay = 0.9 * hill((x - 4) / 1.5) * hill((y - 10) / 1);
    const ridge = Math.max(0, 375 + 75 * detail) * hill((x - crest) / 2.3) * hill((y - 11) / 13);
    const long = risen(ellipse(x, y, [8.9, 11, 5, 9.2]) + shore - bay, Math.max(1, 16 + 12 * detail + ridge));
    const middle = risen(
      ellipse(x, y, [20.2, 7.2, 2.1, 2.8]) + shore,
      Math.max(1, 12 + 8 * detail + (90 + 25 * detail) * hill((x - 20.2) / 1.2) * hill((y - 7) / 1.6)),
    );
    const north = risen(
      ellipse(x, y, [18.4, 17.6, 1.5, 1.3]) + shore,
      Math.max(1, 8 + 6 * detail + (50 + 15 * detail) * hill((x - 18.4) / 0.8) * hill((y - 17.6) / 0.8)),
    );
    return Math.max(long, middle, north);
  });
}

/** People per square kilometer over the archipelago: a town on the west coast, hamlets, empty slopes and sea. */
export function settlement(seed) {
  const height = archipelago(seed);
  const texture = rough(seed + 307, 4);
  const places = [
    [6.2, 8.0, 0.85, 2600],
    [6.6, 13.8, 0.5, 420],
    [11.9, 9.2, 0.45, 260],
    [20.0, 8.4, 0.4, 180],
  ];
  return (x, y) => {
    const ground = height(x, y);
    if (ground <= 0) return 0;
    const patchy = Math.max(0, 1 + 0.55 * texture(x / 0.5, y / 0.5));
    const lived = places.reduce((sum, [east, north, reach, most]) => {
      const away = ((x - east) ** 2 + (y - north) ** 2) / reach ** 2;
      return sum + most / (1 + away ** 3);
    }, 0);
    return ground > 120 ? 0.5 : (lived + 4) * patchy;
  };
}

/** A second group of islands, low and scattered, for the survey that other software writes. */
export function lowIslands(seed) {
  const coast = rough(seed, 5);
  const slopes = rough(seed + 101, 6);
  return bent(seed, 0.7, (x, y) => {
    const shore = 0.28 * coast(x / 1.7, y / 1.7);
    const detail = slopes(x / 1.2, y / 1.2);
    const west = risen(
      ellipse(x, y, [5.6, 7.6, 3, 4.2]) + shore,
      Math.max(1, 11 + 8 * detail + (150 + 40 * detail) * hill((x - 5.4) / 1.4) * hill((y - 8) / 2)),
    );
    const east = risen(
      ellipse(x, y, [13.6, 6.2, 2.4, 2]) + shore,
      Math.max(1, 8 + 6 * detail + (70 + 20 * detail) * hill((x - 13.6) / 1.1) * hill((y - 6.2) / 1)),
    );
    return Math.max(west, east);
  });
}
