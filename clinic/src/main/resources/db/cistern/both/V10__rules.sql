-- What a house decides for itself, change by change. A rule holds as its last change says; an empty
-- value takes the rule back to what lies beneath.
create table rule_change (
  number bigint not null primary key,
  at text not null,
  account text not null references account (id),
  rule text not null,
  typed text not null,
  unit text not null,
  source text not null,
  reason text not null
);
