-- When a duty is due, in UTC: the day is a timetable. What waits is made again by the program.
alter table case_duty add column due_at text not null default '';
update case_summary set made_by = '', summary = '';
