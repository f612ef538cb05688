using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace AimTrainer.Store;

/// <summary>Keeps a moment as UTC date and time, so that the database can sort it.</summary>
public sealed class UtcTime : ValueConverter<DateTimeOffset, DateTime>
{
    /// <summary>Makes one.</summary>
    public UtcTime()
        : base(moment => moment.UtcDateTime, utc => new DateTimeOffset(DateTime.SpecifyKind(utc, DateTimeKind.Utc)))
    {
    }
}
