create trigger gel_picture_no_change before update or delete on gel_picture
for each row execute function refuse_change();

create trigger gel_reading_no_change before update or delete on gel_reading
for each row execute function refuse_change();
