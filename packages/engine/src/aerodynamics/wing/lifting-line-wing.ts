import { type LiftingLine, liftFactor } from "./lifting-line.ts";
import { attachedCirculation, attachedInverse, type Circulation, solvedCirculation, type WingCondition } from "./lifting-line-solution.ts";
import { StripReader } from "./strip-reader.ts";
import { meanAerodynamicChord } from "./wing-planform.ts";
import type { WingPoint, WingStation } from "./wing-point.ts";
import { stripCoefficients, type WingStrip } from "./wing-strip.ts";

/** Beyond this angle to the stream a lifting line means nothing [rad]. Our own choice. */
const widest = Math.PI / 3;

/** A wing ready to be asked at many angles. */
export class LiftingLineWing {
  readonly line: LiftingLine;
  private readonly inverse: Float64Array;
  private readonly perAngle: Circulation;
  private readonly basic: Circulation;

  constructor(line: LiftingLine) {
    this.line = line;
    this.inverse = attachedInverse(line);
    this.perAngle = attachedCirculation(line, this.inverse, new Float64Array(line.count).fill(1));
    this.basic = attachedCirculation(
      line,
      this.inverse,
      line.twist.map(
        (twist, v) =>
          twist + (line.strips[v] as WingStrip).flap.angle - (line.strips[v] as WingStrip).zeroLiftAngle * Math.cos(line.planform.sweep),
      ),
    );
  }

  /** Lift coefficient at an angle of the root chord [rad] as if nothing stalled. */
  attachedLift(angle: number): number {
    return total(this.line, this.basic.circulation) + angle * total(this.line, this.perAngle.circulation);
  }

  /** The wing at an angle: by the lifting line up to the stall of its first strip, beyond it by strips. */
  at(condition: WingCondition): WingPoint {
    if (Math.abs(condition.angle) < widest) {
      const start = this.basic.circulation.map((value, v) => value + condition.angle * (this.perAngle.circulation[v] as number));
      const found = solvedCirculation(this.line, condition, start, this.inverse);
      if (found) return pointOf(this.line, condition, found, "lifting-line");
    }
    return pointOf(this.line, condition, this.stalled(condition), "strips");
  }

  /**
   * Lift of the strips under a downwash that has the shape of attached flow and the size of the lift there is: one unknown,
   * which always has an answer.
   *
   * @derivation in attached flow with straight lift curves this is the lifting line itself; our own way beyond stall
   */
  private stalled(condition: WingCondition): Circulation {
    const { line, basic, perAngle } = this;
    const reader = new StripReader(line, condition);
    const basicLift = total(line, basic.circulation);
    const liftPerAngle = total(line, perAngle.circulation);
    const washAt = (lift: number): Float64Array =>
      basic.downwash.map((wash, v) => wash + ((lift - basicLift) / liftPerAngle) * (perAngle.downwash[v] as number));
    const liftUnder = (downwash: Float64Array): Float64Array =>
      line.chord.map((chord, v) => {
        const angle = condition.angle + (line.twist[v] as number) - (downwash[v] as number);
        return (chord / 2) * reader.lift(v, angle);
      });
    const downwash = washAt(fallingRoot((lift) => total(line, liftUnder(washAt(lift))) - lift, -widestLift, widestLift));
    return { circulation: liftUnder(downwash), downwash };
  }
}

/** No wing of one piece has more lift, either way [1]. */
const widestLift = 12;

/** Root of a function that falls from one end to the other: false position with the weight of a stale end halved. */
function fallingRoot(f: (x: number) => number, from: number, to: number): number {
  let [low, high, atLow, atHigh] = [from, to, f(from), f(to)];
  for (let i = 0; i < 80 && high - low > 1e-11; i++) {
    const share = atLow > atHigh ? atLow / (atLow - atHigh) : 0.5;
    const x = i % 4 === 3 ? (low + high) / 2 : low + (high - low) * Math.min(1, Math.max(0, share));
    const value = f(x);
    if (Math.abs(value) < 1e-12) return x;
    if (value > 0) [low, atLow, atHigh] = [x, value, atHigh / 2];
    else [high, atHigh, atLow] = [x, value, atLow / 2];
  }
  return (low + high) / 2;
}

function total(line: LiftingLine, circulation: Float64Array): number {
  let sum = 0;
  for (let v = 0; v < line.count; v++) sum += (circulation[v] as number) * (line.sine[v] as number);
  return sum * liftFactor(line);
}

/**
 * Coefficients from circulation and downwash: C_L, C_Di and the moments as sums over stations at equal steps of θ.
 *
 * @source multhopp-1938, unchecked
 */
function pointOf(line: LiftingLine, at: WingCondition, solved: Circulation, way: WingPoint["way"]): WingPoint {
  const factor = liftFactor(line);
  const mac = meanAerodynamicChord(line.planform).chord / line.planform.span;
  let [lift, induced, profile, moment, rolling, yawing] = [0, 0, 0, 0, 0, 0];
  const stations: WingStation[] = [];
  for (let v = 0; v < line.count; v++) {
    const [place, sine, chord] = [line.place[v] as number, line.sine[v] as number, line.chord[v] as number];
    const [circulation, downwash] = [solved.circulation[v] as number, solved.downwash[v] as number];
    const angle = at.angle + (line.twist[v] as number) - downwash;
    const reading = { mach: at.mach, reynolds: at.reynolds * (line.relativeChord[v] as number) };
    const own = stripCoefficients(line.strips[v] as WingStrip, angle, reading);
    const [weight, drag] = [factor * sine, (chord / 2) * own.drag];
    lift += weight * circulation;
    induced += weight * circulation * downwash;
    profile += weight * drag;
    moment += (weight * ((chord / 2) * own.moment * chord - circulation * (line.aft[v] as number))) / mac;
    rolling -= weight * circulation * (place / 2);
    yawing += weight * (drag + circulation * downwash) * (place / 2);
    stations.push({
      place,
      lift: (2 * circulation) / chord,
      loading: (2 * circulation * line.planform.span ** 2) / line.planform.area,
      effectiveAngle: angle,
      downwash,
    });
  }
  return { lift, induced, profile, moment, rolling, yawing, way, stations };
}
