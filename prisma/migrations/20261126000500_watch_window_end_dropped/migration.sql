-- What became of a released job is computed where it is asked, and settled in settled_job: nothing reads this table.
DROP TABLE "watch_window_end";
