create table account (
  id text not null primary key,
  name text not null unique,
  full_name text not null,
  role text not null,
  password text,
  failures bigint not null,
  locked_until bigint not null,
  is_active bigint not null,
  created_at text not null
);

create table one_time_code (
  hash text not null primary key,
  account text references account (id),
  expires_at bigint not null,
  used_at bigint
);

create table clinic_case (
  id text not null primary key,
  created_at text not null
);

create table case_version (
  case_id text not null references clinic_case (id),
  number bigint not null,
  at text not null,
  account text not null references account (id),
  step text not null,
  workup text not null,
  primary key (case_id, number)
);

create table report (
  case_id text not null references clinic_case (id),
  number bigint not null,
  case_version bigint not null,
  at text not null,
  account text not null references account (id),
  reason text not null,
  made_by text not null,
  workup text not null,
  page text not null,
  pdf ${bytes} not null,
  hash text not null,
  primary key (case_id, number),
  foreign key (case_id, case_version) references case_version (case_id, number)
);

create table draft (
  account text not null references account (id),
  case_id text not null references clinic_case (id),
  step text not null,
  base bigint not null,
  at text not null,
  typed text not null,
  primary key (account, case_id, step)
);

create table audit (
  number bigint not null primary key,
  at text not null,
  account text not null,
  action text not null,
  subject text not null,
  digest text not null,
  hash text not null
);

create table audit_head (
  one bigint not null primary key check (one = 1),
  number bigint not null,
  hash text not null
);

insert into audit_head (one, number, hash) values (1, 0, '');
