/** The three parts in which the questions come up. */
export type PageHeading = "The aircraft" | "The flight" | "The proof";

/** One place on a page: an analysis and which of its figures stand there. */
export interface PageSlot {
  readonly analysis: string;
  /** Figure ids in order; absent: all figures of the analysis. */
  readonly figures?: readonly string[];
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

export type Page = AnsweredPage | UnansweredPage;

/** What a face says where a question has no page yet. */
export const notYet = "not in this version";

/** The questions in order. Besides the registry, the only place that names analyses. */
export const pages: readonly Page[] = [
  { status: "not yet", id: "aircraft", name: "Aircraft", heading: "The aircraft", question: "What is it, and does it balance?" },
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
    slots: [{ analysis: "speed", small: ["lift-shares", "rotor-speed", "stall-margin", "energy-per-distance", "glide", "summary"] }],
    next: "mission",
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

/** The analyses that stand on no page: the bench. Keeps the order given. */
export function benchAnalyses<Named extends { readonly name: string }>(analyses: readonly Named[]): readonly Named[] {
  const placed = new Set(answeredPages().flatMap((page) => page.slots.map((slot) => slot.analysis)));
  return analyses.filter((analysis) => !placed.has(analysis.name));
}
