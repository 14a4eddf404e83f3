"""One function per kind of page: what its template is given, and what search knows of it."""
