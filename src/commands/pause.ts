/** When a long piece of work looks up. */
export interface Pause {
  /** Whether it has gone on for so long that it should. */
  readonly isDue: () => boolean;
  /** Lets everything else have its turn; false if the work is to be stopped. */
  readonly rest: () => Promise<boolean>;
}

/** Lets timers, signals and messages have their turn. */
export function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}
