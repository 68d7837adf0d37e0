import type { Task } from "../../core/plan/model.ts";
import { timesOf, type WorkKind } from "../../core/pace/pace.ts";
import { usesOf } from "../../core/plan/uses.ts";
import { wayReason } from "../../core/plan/way-words.ts";
import { between, inMinutes, type Instant } from "../../core/units/quantity.ts";
import type { Heat } from "../../core/units/temperature.ts";
import type { PlannedMeal } from "./planned-meal.ts";

/** A run sheet for another program; every time in minutes from the start of cooking, to two decimals. */
export interface PlanJson {
  /** `step` is the step's name in its file, with "#2" behind it for the second batch. */
  readonly steps: readonly {
    readonly dish: string;
    readonly step: string;
    readonly start: number;
    readonly end: number;
    readonly uses: readonly string[];
    /** Whether dinner waits for it. */
    readonly critical: boolean;
    /** How much later it may start without making dinner later. */
    readonly slackMin: number;
  }[];
  readonly elapsedMin: number;
  readonly broken: readonly string[];
  readonly onTime: boolean;
  /** How often it would be in time, from 0 to 1, where steps take shorter or longer; null without a serving time. */
  readonly chanceOnTime: number | null;
  readonly ovenMoves: readonly {
    readonly at: number;
    readonly heat: string;
    readonly oven: string;
    readonly readyAt: number;
  }[];
  /** The steps that can be done in several ways; `because` is null where there was nothing to choose. */
  readonly ways: readonly {
    readonly dish: string;
    readonly step: string;
    readonly way: string;
    readonly because: string | null;
  }[];
  /** Where it cannot be on time: dishes without which it would be ready sooner, and when; the soonest first. */
  readonly leaveOut: readonly { readonly dishes: readonly string[]; readonly readyMin: number }[];
  /** How long before serving the hands were to be free, and the steps that stay there; null where none was wished for. */
  readonly lull: { readonly minutes: number; readonly stays: readonly LullStep[] } | null;
  /** The kinds of work that are reckoned with the cook's own pace: 1.3 is three tenths longer than the recipes say. */
  readonly paces: readonly { readonly kind: WorkKind; readonly times: number }[];
}

/** `because`: it keeps no longer, or there is no time before. */
interface LullStep {
  readonly dish: string;
  readonly step: string;
  readonly because: "keeps" | "time";
}

function lullOf({ lull }: PlannedMeal): PlanJson["lull"] {
  if (lull === null) return null;
  const named = (tasks: readonly Task[], because: LullStep["because"]): readonly LullStep[] =>
    tasks.map((task) => ({ dish: task.dish.id, step: stepName(task), because }));
  const stays = [...named(lull.work.bound, "keeps"), ...named(lull.work.crowded, "time")];
  return { minutes: inMinutes(lull.length), stays };
}

const stepName = ({ step, batch }: Task): string => (batch === null ? step.id : `${step.id}#${batch.number}`);

/** "400 F". */
const plainHeat = ({ degrees, scale }: Heat): string => `${Math.round(degrees)} ${scale}`;

function waysOf({ meal }: PlannedMeal): PlanJson["ways"] {
  return meal.dishes.flatMap((dish) =>
    dish.steps.flatMap((step) => {
      if (step.ways === null) return [];
      return { dish: dish.id, step: step.id, way: step.ways.taken, because: wayReason(step) };
    }),
  );
}

/** The run sheet as `plan --json` prints it. */
export function planJson(planned: PlannedMeal): PlanJson {
  const { tasks, sheet, beginsAt } = planned;
  const minute = (at: Instant): number => Math.round(inMinutes(between(beginsAt, at)) * 100) / 100;
  const steps = sheet.entries.flatMap((entry) => {
    const task = tasks.find(({ id }) => id === entry.task);
    if (task === undefined) return [];
    return {
      dish: task.dish.id,
      step: stepName(task),
      start: minute(entry.start),
      end: minute(entry.end),
      uses: usesOf(entry, sheet, planned.setTo, plainHeat),
      critical: planned.chain.has(entry.task),
      slackMin: Math.round(inMinutes(entry.slack) * 100) / 100,
    };
  });
  return {
    steps,
    elapsedMin: minute(sheet.readyAt),
    broken: sheet.broken,
    onTime: sheet.late === 0,
    chanceOnTime: planned.outlook.onTime === null ? null : Math.round(planned.outlook.onTime * 100) / 100,
    ovenMoves: sheet.ovenMoves.map(({ at, heat, oven, readyAt }) => ({
      at: minute(at),
      heat: plainHeat(heat),
      oven,
      readyAt: minute(readyAt),
    })),
    ways: waysOf(planned),
    leaveOut: planned.leaveOut.map(({ dishes, readyAt }) => ({
      dishes: dishes.map(({ id }) => id),
      readyMin: minute(readyAt),
    })),
    lull: lullOf(planned),
    paces: planned.paces.map((pace) => ({ kind: pace.kind, times: timesOf(pace) })),
  };
}
