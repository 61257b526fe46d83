create trigger rule_change_no_change before update or delete on rule_change
for each row execute function refuse_change();
