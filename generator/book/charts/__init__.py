"""Pictures drawn as SVG: text stays text, places across the page stand as shares of its width."""
