-- The day is read in its order, from its start: which duty comes first (place), and when it is due.
alter table case_duty add column place integer not null default 0;
update case_duty set place = case duty
  when 'EMERGENCY' then 0 when 'HEADACHE_CALL' then 1 when 'PUNCTURE' then 2 when 'SERUM' then 3
  when 'OVERDUE' then 4 when 'DUE' then 5 when 'GEL' then 6 else 7 end;
drop index case_duty_order;
create index case_duty_day on case_duty (place, due_at, case_id, until);
create index case_version_account on case_version (account, case_id);
