import type { Group } from "../catalogue/groups";
import type { Findable } from "../pane/all-functions/search";

/** The functions as the page tells of them: it is its own index, so that its script holds none. */
export const functionsOn = (page: ParentNode): readonly Findable[] => [...page.querySelectorAll("article")].map(functionIn);

function functionIn(article: HTMLElement): Findable {
  return {
    id: article.id,
    name: textOf(article, "h3"),
    description: textOf(article, ".description"),
    returns: textOf(article, ".returns"),
    group: article.closest("section")?.id as Group,
    words: article.dataset["words"]?.split(" ").filter((word) => word !== "") ?? [],
    parameters: [...article.querySelectorAll("tbody tr")].map((row) => {
      const [name = "", description = "", wants = ""] = [...row.children].map((cell) => cell.textContent);
      return { name, description, wants };
    }),
  };
}

const textOf = (article: HTMLElement, selector: string): string => article.querySelector(selector)?.textContent ?? "";
