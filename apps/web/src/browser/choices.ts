import type { UnitSystem } from "@wingseed/reports/format";
import type { ThemeChoice } from "../model/session.ts";

/** What the reader chose last time in this browser. Without storage the choices last as long as the page. */
export function savedTheme(): ThemeChoice {
  const saved = readChoice("theme");
  return saved === "light" || saved === "dark" ? saved : "system";
}

export function savedUnits(): UnitSystem {
  return readChoice("units") === "aviation" ? "aviation" : "si";
}

export function saveChoice(name: "theme" | "units", value: string): void {
  try {
    localStorage.setItem(`wingseed.${name}`, value);
  } catch {
    // Storage may be forbidden; the choice then holds until the page is left.
  }
}

function readChoice(name: "theme" | "units"): string | null {
  try {
    return localStorage.getItem(`wingseed.${name}`);
  } catch {
    return null;
  }
}
