create table gel_picture (
  name text not null primary key,
  at text not null,
  account text not null,
  bytes ${bytes} not null
);

create table gel_reading (
  id text not null primary key,
  picture text not null references gel_picture (name),
  lanes text not null,
  at text not null,
  account text not null,
  made_by text not null,
  text text not null,
  unique (picture, lanes)
);
