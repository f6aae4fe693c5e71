select name, kept_epoch_micros, channel_id, sides, answers from comparison order by kept_epoch_micros desc, name
