create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception '% is append-only', tg_table_name;
end;
$$;

create trigger case_version_no_change before update or delete on case_version
for each row execute function refuse_change();

create trigger report_no_change before update or delete on report
for each row execute function refuse_change();

create trigger audit_no_change before update or delete on audit
for each row execute function refuse_change();

