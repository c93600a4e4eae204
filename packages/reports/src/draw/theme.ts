import { darkTheme, lightTheme, type ThemeTokens } from "./tokens.ts";

type Single = {
  [Name in keyof ThemeTokens]: ThemeTokens[Name] extends string ? Name : never;
}[keyof ThemeTokens];
type Step = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** The name of one colour: `ink`, `rotor`, `w-4`, `relief-2`. */
export type TokenName = Single | `${"w" | "p" | "d"}-${Step}` | `relief-${1 | 2 | 3 | 4 | 5}`;

/** Where colours come from: a page's custom properties, or one theme's values for a file that stands alone. */
export type Theme = "css-variables" | ThemeTokens;

/** Every token of a theme under its name. */
export function namedTokens(tokens: ThemeTokens): Readonly<Record<TokenName, string>> {
  const named: Record<string, string> = {};
  for (const [name, value] of Object.entries(tokens) as [string, string | readonly string[]][]) {
    if (typeof value === "string") named[name] = value;
    else {
      value.forEach((step, index) => {
        named[`${name}-${index + 1}`] = step;
      });
    }
  }
  return named as Record<TokenName, string>;
}

/** How a colour is written under a theme. */
export function painter(theme: Theme): (token: TokenName) => string {
  if (theme === "css-variables") return (token) => `var(--${token})`;
  const named = namedTokens(theme);
  return (token) => named[token];
}

/** The custom properties of one theme as CSS declarations, one a line. */
export function themeDeclarations(tokens: ThemeTokens): string {
  return Object.entries(namedTokens(tokens))
    .map(([name, value]) => `--${name}: ${value};`)
    .join("\n");
}

/** Both themes as CSS: light by day, dark where the system or `data-theme` asks for it. */
export function themeCss(): string {
  const light = themeDeclarations(lightTheme);
  const dark = themeDeclarations(darkTheme);
  return [
    `:root {\ncolor-scheme: light;\n${light}\n}`,
    `@media (prefers-color-scheme: dark) {\n:root:not([data-theme="light"]) {\ncolor-scheme: dark;\n${dark}\n}\n}`,
    `:root[data-theme="dark"] {\ncolor-scheme: dark;\n${dark}\n}`,
  ].join("\n");
}
