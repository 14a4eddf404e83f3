// A browser that is told to keep nothing refuses to say what it keeps, or has nothing to ask. The
// theme asks before it starts the search, and would stop there. Here the answer is: nothing.
{
  const [get, set] = [__md_get, __md_set];
  __md_get = (...asked) => {
    try {
      return get(...asked);
    } catch {
      return null;
    }
  };
  __md_set = (...said) => {
    try {
      set(...said);
    } catch {
      // What cannot be kept holds on this page alone.
    }
  };
}
