/** Whether a request's Host names this machine; Excel comes by the name localhost. */
export const isThisMachine = (host) => /^(?:127\.0\.0\.1|localhost|\[::1\])(?::\d+)?$/i.test(host ?? "");
