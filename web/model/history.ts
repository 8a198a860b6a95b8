// History keeps whole documents: edits share all that they do not change, so a
// snapshot costs little. Steps of one gesture (typing in one field, dragging
// one marker) carry one key and become one step.

export interface Step<T> {
  value: T;
  label: string; // what was done to come here
}

const together = 1500; // ms within which edits of one key are one step
const depth = 300;

export class History<T> {
  private past: Step<T>[] = [];
  private future: Step<T>[] = [];
  private now: Step<T>;
  private key = "";
  private at = 0;

  constructor(value: T) {
    this.now = { value, label: "" };
  }

  get value(): T {
    return this.now.value;
  }

  // undoable names the step that undo would take back.
  get undoable(): string | null {
    return this.past.length ? this.now.label : null;
  }

  get redoable(): string | null {
    return this.future.at(-1)?.label ?? null;
  }

  push(value: T, label: string, key = "", time = Date.now()): void {
    if (value === this.now.value) return;
    const joins = key !== "" && key === this.key && time - this.at < together && this.past.length > 0;
    if (!joins) {
      this.past.push(this.now);
      if (this.past.length > depth) this.past.shift();
    }
    this.now = { value, label };
    this.future = [];
    this.key = key;
    this.at = time;
  }

  // seal ends a gesture: the next edit is a step of its own.
  seal(): void {
    this.key = "";
  }

  undo(): string | null {
    const back = this.past.pop();
    if (!back) return null;
    const label = this.now.label;
    this.future.push(this.now);
    this.now = back;
    this.seal();
    return label;
  }

  redo(): string | null {
    const on = this.future.pop();
    if (!on) return null;
    this.past.push(this.now);
    this.now = on;
    this.seal();
    return on.label;
  }

  // reset forgets all steps: for the document that the page starts with.
  reset(value: T): void {
    this.past = [];
    this.future = [];
    this.now = { value, label: "" };
    this.seal();
  }
}
