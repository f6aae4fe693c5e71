insert into comparison (name, kept_epoch_micros, channel_id, sides, answers)
values (:name, :keptMicros, :channelId, :sides, :answers)
on conflict (name) do update set kept_epoch_micros = excluded.kept_epoch_micros, channel_id = excluded.channel_id,
  sides = excluded.sides, answers = excluded.answers
