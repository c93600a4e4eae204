/** The three parts in which the questions come up. */
export type PageHeading = "The aircraft" | "The flight" | "The proof";

/** One place on a page: an analysis and which of its figures stand there. */
export interface PageSlot {
  readonly analysis: string;
  /** Figure ids in order; absent: all figures of the analysis. */
  readonly figures?: readonly string[];
  /** Those that come before the others, where they are drawn. */
  readonly first?: readonly string[];
  /** Those that say enough at half the page's width: they stand two by two where there is room. */
  readonly small?: readonly string[];
}

/** A question that this version answers. */
export interface AnsweredPage {
  readonly status: "answered";
  readonly id: string;
  readonly name: string;
  readonly heading: PageHeading;
  readonly question: string;
  /** What must be there before it can be answered, in words for whoever lacks it. */
  readonly needs: string;
  /** The first slot answers the question; its sentence stands at the top. */
  readonly slots: readonly [PageSlot, ...PageSlot[]];
  /** The page whose question comes next. */
  readonly next?: string;
}

/** A question that belongs to the job and that this version cannot answer: listed so that nobody searches for it. */
export interface UnansweredPage {
  readonly status: "not yet";
  readonly id: string;
  readonly name: string;
  readonly heading: PageHeading;
  readonly question: string;
}

/** One part of the aircraft on the bench page. */
export interface BenchPart extends PageSlot {
  /** As the chooser calls it. */
  readonly name: string;
}

/** A page of many small questions: one part is chosen and asked alone, from its example, the project or a file. */
export interface BenchPage {
  readonly status: "bench";
  readonly id: string;
  readonly name: string;
  readonly heading: PageHeading;
  readonly question: string;
  readonly parts: readonly [BenchPart, ...BenchPart[]];
}

export type Page = AnsweredPage | BenchPage | UnansweredPage;

/** What a face says where a question has no page yet. */
export const notYet = "not in this version";

/** The questions in order. Besides the registry, the only place that names analyses. */
export const pages: readonly Page[] = [
  {
    status: "answered",
    id: "aircraft",
    name: "Aircraft",
    heading: "The aircraft",
    question: "What is it, and does it balance?",
    needs: "an aircraft file",
    slots: [{ analysis: "balance", first: ["arrangement", "loading"] }],
    next: "payload",
  },
  {
    status: "answered",
    id: "payload",
    name: "Payload",
    heading: "The aircraft",
    question: "What can it carry, and for how long?",
    needs: "an aircraft file with a battery pack",
    slots: [{ analysis: "payload", small: ["range", "cruise"] }],
    next: "speed",
  },
  {
    status: "answered",
    id: "speed",
    name: "Speed",
    heading: "The aircraft",
    question: "What does each speed cost?",
    needs: "an aircraft file",
    slots: [
      {
        analysis: "speed",
        small: ["attitude", "lift-shares", "rotor-speed", "stall-margin", "energy-per-distance", "glide", "summary"],
      },
    ],
    next: "point",
  },
  {
    status: "answered",
    id: "point",
    name: "One point",
    heading: "The aircraft",
    question: "What does one point look like?",
    needs: "an aircraft file with controls",
    slots: [{ analysis: "trim", first: ["forces"] }],
    next: "envelope",
  },
  {
    status: "answered",
    id: "envelope",
    name: "Envelope",
    heading: "The aircraft",
    question: "Where can it fly?",
    needs: "an aircraft file with controls",
    slots: [{ analysis: "envelope", small: ["best-climb", "ceilings-over-temperature"] }],
    next: "transition",
  },
  {
    status: "answered",
    id: "transition",
    name: "Transition",
    heading: "The aircraft",
    question: "How does it get from hover to cruise and back?",
    needs: "an aircraft file with controls and a clutch",
    slots: [{ analysis: "transition" }],
    next: "stability",
  },
  {
    status: "answered",
    id: "stability",
    name: "Stability",
    heading: "The aircraft",
    question: "Does it stay there?",
    needs: "an aircraft file with controls",
    slots: [{ analysis: "stability", small: ["growth-clutch-closed", "growth-clutch-open", "margins", "rotor-slowing"] }],
    next: "step",
  },
  {
    status: "answered",
    id: "step",
    name: "Step",
    heading: "The aircraft",
    question: "Does it get through a step?",
    needs: "an aircraft file with controls and their rates",
    slots: [{ analysis: "transient" }],
    next: "mission",
  },
  {
    status: "bench",
    id: "bench",
    name: "Component bench",
    heading: "The aircraft",
    question: "What does each part do alone?",
    parts: [
      {
        analysis: "rotor",
        name: "Rotor",
        first: ["measured-1", "measured-2"],
        small: ["angle-of-attack", "azimuthal-loading", "disc-angle-of-attack", "disc-reynolds", "disc-thrust"],
      },
      {
        analysis: "propeller",
        name: "Propeller",
        first: ["ct-over-advance-ratio", "cp-over-advance-ratio", "efficiency-over-advance-ratio"],
        small: ["cp-over-advance-ratio", "efficiency-over-advance-ratio", "spanwise-loading", "angle-of-attack", "induced-velocity"],
      },
      { analysis: "wing", name: "Wing", small: ["drag", "moment", "polar", "sink", "power", "loading", "section-lift"] },
      { analysis: "motor", name: "Motor", small: ["power", "rate", "torque", "heating"] },
      { analysis: "battery", name: "Battery", small: ["still-deliverable"] },
      { analysis: "section", name: "Blade and wing section", small: ["drag", "moment", "polar"] },
    ],
  },
  {
    status: "not yet",
    id: "alternatives",
    name: "Alternatives",
    heading: "The aircraft",
    question: "Which configuration suits this job?",
  },
  {
    status: "answered",
    id: "mission",
    name: "Mission",
    heading: "The flight",
    question: "Can it fly this job today?",
    needs: "an aircraft file, a mission file, its route and an elevation raster under it",
    slots: [{ analysis: "mission" }],
  },
  { status: "not yet", id: "failure", name: "Failure", heading: "The flight", question: "What if something stops here?" },
  { status: "not yet", id: "people", name: "People", heading: "The flight", question: "Who is below?" },
  { status: "not yet", id: "traffic", name: "Traffic", heading: "The flight", question: "Who else is flying?" },
  { status: "not yet", id: "claims", name: "Claims", heading: "The proof", question: "May we say that?" },
  { status: "not yet", id: "flight-test", name: "Flight test", heading: "The proof", question: "Does it fly as computed?" },
  { status: "not yet", id: "studies", name: "Studies", heading: "The proof", question: "What should we change?" },
  { status: "not yet", id: "dossier", name: "Dossier", heading: "The proof", question: "What do we hand over?" },
];

/** The pages that answer, in order. */
export function answeredPages(): readonly AnsweredPage[] {
  return pages.filter((page) => page.status === "answered");
}

/** The pages as a registry can answer them: one whose first analysis it lacks is not in this version, and no page leads to it. */
export function offeredPages(analyses: readonly { readonly name: string }[]): readonly Page[] {
  const known = new Set(analyses.map(({ name }) => name));
  const isOffered = (page: Page) => page.status !== "answered" || known.has(page.slots[0].analysis);
  return pages.map((page): Page => {
    if (page.status !== "answered") return page;
    const { id, name, heading, question } = page;
    if (!isOffered(page)) return { status: "not yet", id, name, heading, question };
    const { next: written, ...rest } = page;
    const next = nextOffered(written, isOffered);
    return next === undefined ? rest : { ...rest, next };
  });
}

/** The first page along the chain that is offered. */
function nextOffered(id: string | undefined, isOffered: (page: Page) => boolean): string | undefined {
  const page = pages.find((one) => one.id === id);
  if (!page || isOffered(page)) return page?.id;
  return page.status === "answered" ? nextOffered(page.next, isOffered) : undefined;
}

/** The parts of the bench page that a registry has, in the order of the page. */
export function benchParts(analyses: readonly { readonly name: string }[]): readonly BenchPart[] {
  const known = new Set(analyses.map(({ name }) => name));
  return pages.flatMap((page) => (page.status === "bench" ? page.parts.filter((part) => known.has(part.analysis)) : []));
}

/** The analyses that no page names. Keeps the order given. */
export function unplacedAnalyses<Named extends { readonly name: string }>(analyses: readonly Named[]): readonly Named[] {
  const placed = new Set(pages.flatMap(placedOn));
  return analyses.filter((analysis) => !placed.has(analysis.name));
}

function placedOn(page: Page): readonly string[] {
  if (page.status === "answered") return page.slots.map((slot) => slot.analysis);
  return page.status === "bench" ? page.parts.map((part) => part.analysis) : [];
}
