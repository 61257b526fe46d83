-- The comment for the chart is frozen by a signature too; a report of before has none.
alter table report add column chart text;
