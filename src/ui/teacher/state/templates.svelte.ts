import type { Assigned } from '../../../io/review/index.ts';
import type { Changed, TeachingStore, Template } from '../../../io/teaching/index.ts';
import type { TeachingLists } from './lists.svelte.ts';

/** Remarks and assignments in the teacher's own words, kept to be used again; those used most come first. Nothing rejects. */
export class Templates {
  #all: readonly Template[] = $state.raw([]);
  /** deleted last, and can be brought back */
  removed: Template | null = $state.raw(null);
  readonly #store: TeachingStore;
  readonly #lists: TeachingLists;

  constructor(store: TeachingStore, lists: TeachingLists) {
    this.#store = store;
    this.#lists = lists;
  }

  readonly #ordered: readonly Template[] = $derived(
    this.#all.toSorted((a, b) => b.used - a.used || a.words.localeCompare(b.words)),
  );
  readonly remarks: readonly Template[] = $derived(
    this.#ordered.filter(({ assignment }) => assignment === undefined),
  );
  readonly assignments: readonly (Template & { readonly assignment: readonly Assigned[] })[] = $derived(
    this.#ordered.flatMap(({ assignment, ...one }) =>
      assignment === undefined ? [] : [{ ...one, assignment }],
    ),
  );

  async load(): Promise<void> {
    this.#all = (await this.#lists.try(() => this.#store.templates())) ?? this.#all;
  }

  /** What another window changed is here too. */
  async follow({ templates = [] }: Changed): Promise<void> {
    if (templates.length > 0) await this.load();
  }

  /** Whether such a remark is kept already. */
  has(words: string): boolean {
    return this.remarks.some((one) => one.words === words.trim());
  }

  /** Keeps a remark, or exercises under a name; one of that name takes them in place of its own. */
  async keep(words: string, assignment: readonly Assigned[] | null = null): Promise<void> {
    const tidy = words.trim();
    const kind = assignment === null ? this.remarks : this.assignments;
    const same = kind.find((one) => one.words === tidy);
    if (tidy === '' || (same !== undefined && assignment === null)) return;
    const template: Template = {
      id: same?.id ?? this.#store.newId(),
      words: tidy,
      used: same?.used ?? 0,
      ...(assignment !== null && { assignment }),
    };
    await this.#lists.try(() => this.#store.addTemplates([template]));
    await this.load();
  }

  /** It was used once more. */
  async use({ id }: Template): Promise<void> {
    await this.#lists.try(() =>
      this.#store.changeTemplates([{ id, fields: ({ used }) => ({ used: used + 1 }) }]),
    );
    await this.load();
  }

  async remove(template: Template): Promise<void> {
    this.removed = template;
    await this.#lists.try(() => this.#store.end({ templates: [template.id] }));
    await this.load();
  }

  async takeBack(): Promise<void> {
    const template = this.removed;
    this.removed = null;
    if (template !== null) await this.#lists.try(() => this.#store.addTemplates([template]));
    await this.load();
  }
}
