import type { GenericSection } from "./section-definition.ts";
import type { SectionPoint } from "./section-table.ts";
import { plateMoment } from "./separated-flow.ts";

/** How fast attached flow gives way to separated flow around the stall angle [1/rad]. Chosen, common practice. */
const blendRate = 60;

/**
 * A generic section at Mach 0.
 *
 *     attached    c_l = a α              c_d = c_d0 + c_d1 α + c_d2 α²
 *     separated   c_l = 2.2 sin α cos α  c_d = c_d0 + 1.9 sin² α
 *     weight of the attached part  1/(1 + exp(60 (|α| − α_stall)))
 *
 * The constants of the separated law are those of a flat plate across the stream, from memory.
 *
 * @param alpha α, from −π to π [rad]
 * @derivation own blend of thin-section and flat-plate laws, from memory
 */
export function genericSectionPoint(section: GenericSection, alpha: number): SectionPoint {
  const attached = 1 / (1 + Math.exp(blendRate * (Math.abs(alpha) - section.stallAngle)));
  const separated = 1 - attached;
  const attachedDrag = section.cd0 + section.cd1 * alpha + section.cd2 * alpha * alpha;
  const separatedLift = 2.2 * Math.sin(alpha) * Math.cos(alpha);
  const separatedDrag = section.cd0 + 1.9 * Math.sin(alpha) ** 2;
  return {
    attachedLift: attached * section.liftSlope * alpha,
    separatedLift: separated * 2.2 * Math.sin(alpha) * Math.cos(alpha),
    drag: attached * attachedDrag + separated * separatedDrag,
    viscousDrag: attached * attachedDrag + separated * section.cd0,
    // Symmetric in lift: attached flow has no moment about the quarter chord.
    moment: separated * plateMoment(alpha, separatedLift, separatedDrag),
  };
}
