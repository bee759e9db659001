//! Helpers that only tests use: reading PDFs back, running the command, the room table.
