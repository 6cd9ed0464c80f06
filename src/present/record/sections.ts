import type { PhotoMark } from '../../core/job/jobSchema.ts';
import type { Truss } from '../../core/truss/result.ts';
import type { Coverage } from '../../core/walkRound/result.ts';
import type { Glyph } from '../draw/glyph.ts';
import type { Drawing } from '../draw/pen.ts';
import type { MapViewName } from '../draw/project.ts';
import type { Table } from '../table.ts';
import type { Caution } from '../words/cautions.ts';

/** A photo with what is drawn on it and said of it; without a size there is no picture to show. */
export interface Shot {
  readonly hash: string;
  readonly size?: { readonly width: number; readonly height: number };
  readonly words: readonly string[];
  readonly marks: readonly PhotoMark[];
  /** Stands in the empty frame; left out: the photo is not with this copy. */
  readonly instead?: string;
}

/** A step to tick by hand: what to do, what to write down; already ticked ones say by whom. */
export interface TickRow {
  readonly text: string;
  readonly note?: string;
  readonly strong?: boolean;
  readonly done?: string;
  /** Names of what is measured and written in. */
  readonly blanks: readonly string[];
}

/** A distance to hold by hand; what is found already, where somebody has read it. */
export interface MeasureRow {
  readonly id: string;
  readonly words: string;
  readonly aim: string;
  readonly limit: string;
  readonly found?: string;
}

/** A tag to cut out and tie to a tube. */
export interface TagLabel {
  readonly id: string;
  readonly words: string;
  readonly chalk: string;
  readonly glyph: Glyph;
  readonly decision: string;
  readonly next: string;
  /** What its code says when a tablet reads it: plain text. */
  readonly code: string;
}

/** One thing on a page, as plain data. The layout decides where it stands; it never decides whether. */
export type Section =
  | { readonly kind: 'title'; readonly text: string; readonly under: string }
  | { readonly kind: 'heading'; readonly text: string; readonly note?: string }
  | {
      readonly kind: 'subheading';
      readonly text: string;
      readonly note?: string;
      /** Room wanted below it, mm; left out: a few lines. */
      readonly keepMm?: number;
    }
  /** Where a chapter begins: the contents give its sheet. */
  | { readonly kind: 'mark'; readonly name: string }
  | {
      readonly kind: 'contents';
      readonly rows: readonly { readonly mark: string; readonly title: string }[];
    }
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [name: string, value: string])[] }
  | { readonly kind: 'lines'; readonly lines: readonly string[]; readonly strong?: boolean }
  | { readonly kind: 'counts'; readonly coverage: Coverage }
  | {
      readonly kind: 'notLookedAt';
      readonly counts: readonly [string, string];
      readonly groups: readonly { readonly title: string; readonly ids: readonly string[] }[];
    }
  | {
      readonly kind: 'table';
      readonly table: Table;
      /** Ids of the columns on paper; left out: all. */
      readonly only?: readonly string[];
      /** Rows on paper; the table says how many more its CSV has. */
      readonly most?: number;
    }
  /** A drawing no wider than the room and no higher than a sheet. */
  | { readonly kind: 'drawing'; readonly title: string; readonly drawing: Drawing }
  | { readonly kind: 'cautions'; readonly cautions: readonly Caution[] }
  | {
      readonly kind: 'map';
      readonly truss: Truss;
      readonly coverage: Coverage;
      /** Views that share a sheet and a scale. */
      readonly views: readonly MapViewName[];
      /** Repairs whose steps are all ticked: a tick stands by their ids. */
      readonly ticked?: ReadonlySet<string>;
    }
  /** Bays close to, two on a sheet. */
  | {
      readonly kind: 'closeUps';
      readonly truss: Truss;
      readonly coverage: Coverage;
      readonly bays: readonly { readonly id: string; readonly members: readonly string[] }[];
    }
  | { readonly kind: 'ticks'; readonly rows: readonly TickRow[] }
  | { readonly kind: 'measures'; readonly unit: string; readonly rows: readonly MeasureRow[] }
  | { readonly kind: 'blanks'; readonly names: readonly string[] }
  | { readonly kind: 'tags'; readonly tags: readonly TagLabel[] }
  | { readonly kind: 'photos'; readonly shots: readonly Shot[] }
  | { readonly kind: 'stations'; readonly truss: Truss; readonly coverage: Coverage };

/** Sheets that belong together: which way they lie, which side they show, at what scale. */
export interface Part {
  readonly lie: 'upright' | 'turned';
  /** Side in words for the title block. */
  readonly side: string;
  readonly sections: readonly Section[];
  /** Begins a sheet of its own, although the part before it lies alike; `unlessFits`: only when it would run over. */
  readonly fresh?: boolean | 'unlessFits';
}

/** What every sheet says of the job. */
export interface ReportHead {
  readonly title: string;
  readonly job: string;
  readonly aircraft: string;
  readonly practice: boolean;
  /** Time of the latest record, as it stands there; never the reader's clock. */
  readonly date: string;
  readonly revision: string;
  readonly version: string;
  readonly paper: 'a4' | 'letter';
  /** What nobody has looked at, on every sheet of a job. */
  readonly unseen?: string;
}

/** A report as plain data: what it says, in order, before anything is laid out. */
export interface Report {
  readonly head: ReportHead;
  readonly parts: readonly Part[];
}
