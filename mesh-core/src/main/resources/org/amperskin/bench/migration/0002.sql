-- A wrong entry is struck out with a reason and stays readable, as in a paper log.
ALTER TABLE entry ADD COLUMN struck TEXT;
CREATE INDEX weighing_of_bath ON weighing (bath);
CREATE INDEX counter_of_bath ON counter (bath);
