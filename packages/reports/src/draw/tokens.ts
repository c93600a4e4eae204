/** A scale of seven steps. */
type Seven = readonly [string, string, string, string, string, string, string];

/** All colours of one theme. Contrast and distance are kept by a test beside this file. */
export interface ThemeTokens {
  readonly ground: string;
  readonly surface: string;
  readonly ink: string;
  readonly "ink-2": string;
  readonly "ink-3": string;
  readonly hairline: string;
  readonly "control-edge": string;
  readonly handle: string;
  readonly "handle-wash": string;
  readonly stops: string;
  readonly care: string;
  readonly note: string;
  /** Categories, with one fixed meaning each. */
  readonly rotor: string;
  readonly battery: string;
  readonly wing: string;
  readonly losses: string;
  readonly body: string;
  readonly propellers: string;
  readonly avionics: string;
  /** Sequential, physics: margin, height, power. */
  readonly w: Seven;
  /** Sequential, people and harm. */
  readonly p: Seven;
  /** Diverging; the middle is zero always. */
  readonly d: Seven;
  /** Grey relief, low to high, and the flat tint of water. */
  readonly relief: readonly [string, string, string, string, string];
  readonly water: string;
}

export const lightTheme: ThemeTokens = {
  ground: "#F1F4F3",
  surface: "#FFFFFF",
  ink: "#18262C",
  "ink-2": "#4A5A61",
  "ink-3": "#5E6E75",
  hairline: "#C9D2D2",
  "control-edge": "#7C8B91",
  handle: "#8A1F5C",
  "handle-wash": "#E7D6E1",
  stops: "#A32414",
  care: "#7A5200",
  note: "#34596B",
  rotor: "#238DDA",
  battery: "#7E6438",
  wing: "#004A2F",
  losses: "#5945A7",
  body: "#8D8B00",
  propellers: "#3A758B",
  avionics: "#B77773",
  w: ["#E2F5F3", "#A2D8DC", "#6BB7C9", "#4593B3", "#2C6F99", "#224C79", "#1B2C53"],
  p: ["#F6EFE1", "#E5C7A2", "#D69B6B", "#C27044", "#A54730", "#7B2C2D", "#4F1724"],
  d: ["#004D74", "#2C7DA7", "#7CB4CF", "#E5EDED", "#D3A96F", "#B06F2D", "#7C4014"],
  relief: ["#E6E9E7", "#DADEDC", "#CDD2D1", "#C0C7C6", "#B3BBBB"],
  water: "#DDE8EC",
};

export const darkTheme: ThemeTokens = {
  ground: "#161D20",
  surface: "#1E2629",
  ink: "#E6ECEB",
  "ink-2": "#B3C0C3",
  "ink-3": "#93A2A7",
  hairline: "#37444A",
  "control-edge": "#74858C",
  handle: "#F0A8CC",
  "handle-wash": "#4A2C3E",
  stops: "#FF9E8A",
  care: "#E3B65A",
  note: "#9CC3D6",
  rotor: "#84A0EF",
  battery: "#9C742C",
  wing: "#B4D9B8",
  losses: "#7F6DBC",
  body: "#CCD778",
  propellers: "#58848C",
  avionics: "#DA7E77",
  w: ["#242D42", "#2F4B6C", "#386D90", "#4890AE", "#67B4C6", "#9AD5D9", "#D6F2EF"],
  p: ["#432328", "#703534", "#9A4E3C", "#C06D42", "#D9965C", "#E7C192", "#F6EAD1"],
  d: ["#97DDF9", "#5AA8D4", "#316F97", "#313A3C", "#8A542D", "#C98845", "#F4CA84"],
  relief: ["#20282B", "#283134", "#30393D", "#384246", "#404B4F"],
  water: "#17252D",
};

export const categoryNames = ["rotor", "battery", "wing", "losses", "body", "propellers", "avionics"] as const;
