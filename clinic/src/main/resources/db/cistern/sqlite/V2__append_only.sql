create trigger case_version_no_update before update on case_version
begin
  select raise(abort, 'case_version is append-only');
end;

create trigger case_version_no_delete before delete on case_version
begin
  select raise(abort, 'case_version is append-only');
end;

create trigger report_no_update before update on report
begin
  select raise(abort, 'report is append-only');
end;

create trigger report_no_delete before delete on report
begin
  select raise(abort, 'report is append-only');
end;

create trigger audit_no_update before update on audit
begin
  select raise(abort, 'audit is append-only');
end;

create trigger audit_no_delete before delete on audit
begin
  select raise(abort, 'audit is append-only');
end;

