-- What a signature freezes beside the report: the policy in force, the referrer's letter, the
-- patient's page. A report that was signed before has none of them.
alter table report add column policy text;
alter table report add column letter ${bytes};
alter table report add column patient ${bytes};
