create trigger gel_picture_no_update before update on gel_picture
begin
  select raise(abort, 'gel_picture is append-only');
end;

create trigger gel_picture_no_delete before delete on gel_picture
begin
  select raise(abort, 'gel_picture is append-only');
end;

create trigger gel_reading_no_update before update on gel_reading
begin
  select raise(abort, 'gel_reading is append-only');
end;

create trigger gel_reading_no_delete before delete on gel_reading
begin
  select raise(abort, 'gel_reading is append-only');
end;
