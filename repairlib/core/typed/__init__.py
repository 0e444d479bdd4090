"""Text and tables as people type them: encodings, columns, headings, references, readings."""
