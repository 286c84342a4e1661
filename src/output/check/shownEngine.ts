import type { EngineReport, ReportedSession, StateReport } from '../../checks/judge/report.ts';
import { engineJson, followUpJson } from './checkJson.ts';
import { type EngineView, engineView, type Showing } from './view/engineView.ts';

/** An engine as formats take it: in words for a reader, as data for a program. Both are plain data. */
export interface ShownEngine {
  readonly view: EngineView;
  readonly data: EngineJson;
  readonly followUps: readonly FollowUpJson[];
}

/** Each is built once, where a format asks for it. */
export class ReportedEngine implements ShownEngine {
  readonly #report: EngineReport;
  readonly #chosen: readonly (ReportedSession | StateReport)[];
  readonly #showing: Showing;
  #view: EngineView | undefined;
  #data: EngineJson | undefined;
  #followUps: readonly FollowUpJson[] | undefined;

  constructor(report: EngineReport, chosen: readonly (ReportedSession | StateReport)[], showing: Showing) {
    this.#report = report;
    this.#chosen = chosen;
    this.#showing = showing;
  }

  /** What was asked for. */
  toJSON(): Partial<ShownEngine> {
    const [view, data, followUps] = [this.#view, this.#data, this.#followUps];
    return { ...(view && { view }), ...(data && { data }), ...(followUps && { followUps }) };
  }

  get view(): EngineView {
    this.#view ??= engineView(this.#report, this.#chosen, this.#showing);
    return this.#view;
  }

  get data(): EngineJson {
    this.#data ??= engineJson(this.#report, this.#chosen);
    return this.#data;
  }

  get followUps(): readonly FollowUpJson[] {
    this.#followUps ??= this.#report.followUps.map(followUpJson);
    return this.#followUps;
  }
}

export type EngineJson = ReturnType<typeof engineJson>;

export type FollowUpJson = ReturnType<typeof followUpJson>;
