// What an account of judgements is made of.
import { type Blocks, quoted } from '../../vocabulary/index.ts';

/** What is judged of a thing, or is not: the beginning of a phrase that its name ends. */
export const subjects = {
  'closing-edge': 'the closing edge of',
  hinge: 'the hinge of',
  underside: 'the gap under',
  'opening-side': 'the room behind the open leaf',
  passing: 'what runs past',
  level: 'how surely the gate is stopped by',
  control: 'how the gate is commanded by',
  selector: 'what is set at',
  forces: 'the forces of',
  sight: 'what is seen by',
  'run-on': 'the run-on of',
  'slow-zone': 'how slow the slow zone makes',
  release: 'whether anything moves by itself once it is released:',
  balance: 'how the rollers hold',
  mains: 'the mains circuit',
  cable: 'the cable',
  supply: 'what feeds',
  feed: 'the supply of',
  entrapment: 'what the rules of North America ask of the site',
  site: 'who is to be protected, and by which rules',
} as const;
export type Subject = keyof typeof subjects;

/** How grave it is that something is not judged, where the gate is built. */
export type Grade = 'error' | 'warning' | 'note';

export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** A fact that nobody states. */
export interface Lack {
  /** The word of the line that would say it. */
  readonly word: string;
  /** The block in which that line would stand. */
  readonly block: keyof Blocks;
  /** The name of that block; empty where it has none. */
  readonly of: string;
  /** The head of that block; of a model that stands in another file, a place in that file. */
  readonly at: Stretch;
  /** The file of a model, where it is another one. */
  readonly path: string | undefined;
  /** As one asks for it. */
  readonly question: string;
}

export interface Entry {
  readonly subject: Subject;
  /** The name of what it is about; empty where the site has but one. */
  readonly of: string;
  readonly at: Stretch;
  /** Empty where it is judged. */
  readonly lacks: readonly Lack[];
  readonly grade: Grade;
}

/** Takes an entry. */
export type Tell = (subject: Subject, of: string, at: Stretch, lacks: readonly Lack[], grade?: Grade) => void;

/** “the hinge of “west””. */
export const entryInWords = ({ subject, of }: Entry): string => (of === '' ? subjects[subject] : `${subjects[subject]} ${quoted(of)}`);

export const none: readonly never[] = [];
