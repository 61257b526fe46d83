create trigger rule_change_no_update before update on rule_change
begin
  select raise(abort, 'rule_change is append-only');
end;

create trigger rule_change_no_delete before delete on rule_change
begin
  select raise(abort, 'rule_change is append-only');
end;
