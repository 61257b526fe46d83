-- What lists show of every case, made from its last version by the program and the facts in force;
-- made again when either changes, or when a time in it has come. Nothing of it is kept for good.
create table case_summary (
  case_id text not null primary key references clinic_case (id),
  version bigint not null,
  signed bigint not null,
  changed_at text not null,
  made_by text not null,
  renew_at text not null,
  name text not null,
  person text not null,
  search text not null,
  summary text not null
);

create index case_summary_order on case_summary (changed_at desc, case_id, search);
create index case_summary_made on case_summary (made_by);
create index case_summary_renew on case_summary (renew_at);
create index case_summary_person on case_summary (person);

-- What waits, one row a duty; after a time a case that is signed as it stands is not looked at.
create table case_duty (
  case_id text not null references clinic_case (id),
  duty text not null,
  changed_at text not null,
  until text not null,
  primary key (case_id, duty)
);

create index case_duty_order on case_duty (duty, changed_at desc, case_id, until);

insert into case_summary
  (case_id, version, signed, changed_at, made_by, renew_at, name, person, search, summary)
select v.case_id, max(v.number),
  coalesce((select max(r.case_version) from report r where r.case_id = v.case_id), 0),
  max(v.at), '', '9999', '', '', '', ''
from case_version v group by v.case_id;
