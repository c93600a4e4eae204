import type { Method, Warning } from "../contract.ts";

/** How trims are made and what stands behind them. */
export const trimMethod: Method = {
  summary:
    "Blade elements over 24 azimuths and 16 radii with Glauert inflow, momentum propellers, first-order motors; forces fore and aft and up, and yaw, " +
    "balanced at least electric power over the free controls. Pitching and rolling moments are not balanced at this trim level.",
  sources: ["johnson-1980", "leishman-2006", "wheatley-hood-1935", "drela-2007", "plett-2015", "nocedal-wright-2006"],
  checks: ["naca-tr-515", "glauert-inflow", "profile-power-factor"],
};

export const trimWarnings: readonly Warning[] = [
  {
    kind: "trim-level-reduced",
    grade: "note",
    message:
      "Pitching and rolling moments and side force are not balanced at this trim level; the disc tilts freely within the flap range.",
  },
  {
    kind: "collective-uncertain",
    grade: "note",
    message: "Power at a given thrust can be trusted to 5 to 8 %, collective at a given thrust only to 1 to 1.5 degrees (common practice).",
  },
];
