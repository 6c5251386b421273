/** Until the browser has drawn what was last put on the page; a page in the background draws nothing and is not waited for. */
export const painted = (): Promise<void> =>
  new Promise((done) => {
    requestAnimationFrame(() => setTimeout(done));
    setTimeout(done, 100);
  });
