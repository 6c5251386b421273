import { Page } from "./page";

void new Page(document.body).start();
