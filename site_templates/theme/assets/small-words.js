// A word that is typed finds all words that begin with it, so "in" would find "inspection". Where other
// words are typed beside them, small words ask for nothing. Works for the worker and what stands in for it.
const SMALL = new Set(
  ("a about an and any are at be been but by can could did do does for from get give had has have he her " +
    "him his how i if in into is it its let may me must my of on or our shall she should so some such " +
    "than that the their them then there these they this those to us was we were what when where which " +
    "who whom why will with would you your").split(" ")
);
const QUERY = 2; // the theme's kind of message that asks

const withoutSmallWords = (typed) => {
  const words = typed.split(/[\s,:;()?!]+/).filter(Boolean);
  const left = words.filter((word) => !SMALL.has(word.toLowerCase()));
  return left.length ? left.join(" ") : typed;
};

const post = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (message, ...rest) {
  const asks = message?.type === QUERY && typeof message.data === "string";
  const sent = asks ? { ...message, data: withoutSmallWords(message.data) } : message;
  return post.call(this, sent, ...rest);
};
