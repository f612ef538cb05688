using System.Text.RegularExpressions;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Conventions;

namespace AimTrainer.Store;

/// <summary>The record: bowlers, balls, drills, sessions, their logs, and what the logs add up to. The same for every database.</summary>
/// <param name="options">Which database.</param>
public sealed partial class RecordContext(DbContextOptions<RecordContext> options) : DbContext(options)
{
    /// <summary>Bowlers.</summary>
    public DbSet<BowlerRow> Bowlers => Set<BowlerRow>();

    /// <summary>Balls.</summary>
    public DbSet<BallRow> Balls => Set<BallRow>();

    /// <summary>The history of their surfaces.</summary>
    public DbSet<BallSurfaceRow> BallSurfaces => Set<BallSurfaceRow>();

    /// <summary>Drills as they were used.</summary>
    public DbSet<DrillRow> Drills => Set<DrillRow>();

    /// <summary>Sessions.</summary>
    public DbSet<SessionRow> Sessions => Set<SessionRow>();

    /// <summary>The steps of all sessions.</summary>
    public DbSet<LogStepRow> LogSteps => Set<LogStepRow>();

    /// <summary>Graded shots as they stand.</summary>
    public DbSet<GradedShotRow> GradedShots => Set<GradedShotRow>();

    /// <summary>Their targets.</summary>
    public DbSet<ShotTargetRow> ShotTargets => Set<ShotTargetRow>();

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        // Every index costs each write a page; only those are made that are asked for below. A bowler's shots are found through
        // the bowler's sessions.
        configurationBuilder.Conventions.Remove<ForeignKeyIndexConvention>();

        // UTC date and time: text that sorts in SQLite, a time stamp in PostgreSQL. The offset that a person saw is in the JSON.
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTime>();
        configurationBuilder.Properties<Hand>().HaveConversion<EnumText<Hand>>();
        configurationBuilder.Properties<BlockKind>().HaveConversion<EnumText<BlockKind>>();
        configurationBuilder.Properties<BallSurfaceKind>().HaveConversion<EnumText<BallSurfaceKind>>();
        configurationBuilder.Properties<CrossingKind>().HaveConversion<EnumText<CrossingKind>>();
        configurationBuilder.Properties<SpeedPlace>().HaveConversion<EnumText<SpeedPlace>>();
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<BowlerRow>(bowler =>
        {
            bowler.ToTable("bowlers").HasKey(row => row.Id);
            bowler.HasIndex(row => row.Key).IsUnique();
        });
        modelBuilder.Entity<BallRow>(ball =>
        {
            ball.ToTable("balls").HasKey(row => row.Id);
            ball.HasIndex(row => new { row.BowlerId, row.Key }).IsUnique();
            ball.HasOne<BowlerRow>().WithMany().HasForeignKey(row => row.BowlerId);
        });
        modelBuilder.Entity<BallSurfaceRow>(surface =>
        {
            surface.ToTable("ball_surfaces").HasKey(row => row.Id);
            surface.HasIndex(row => new { row.BallId, row.At });
            surface.HasOne<BallRow>().WithMany().HasForeignKey(row => row.BallId);
        });
        modelBuilder.Entity<DrillRow>(drill => drill.ToTable("drills").HasKey(row => row.Hash));
        modelBuilder.Entity<SessionRow>(session =>
        {
            session.ToTable("sessions").HasKey(row => row.Key);
            session.Property(row => row.Id).IsRequired();
            session.HasIndex(row => row.Id).IsUnique();
            session.HasIndex(row => row.StartedAt);
            session.HasIndex(row => new { row.BowlerId, row.StartedAt });
            session.HasIndex(row => new { row.Station, row.StartedAt });
            session.HasOne<BowlerRow>().WithMany().HasForeignKey(row => row.BowlerId);
            session.HasOne<BallRow>().WithMany().HasForeignKey(row => row.BallId);
            session.HasOne<DrillRow>().WithMany().HasForeignKey(row => row.DrillHash);
        });
        modelBuilder.Entity<LogStepRow>(step =>
        {
            step.ToTable("log_steps").HasKey(row => new { row.SessionKey, row.Sequence });
            step.HasOne<SessionRow>().WithMany().HasForeignKey(row => row.SessionKey);
        });
        modelBuilder.Entity<GradedShotRow>(shot =>
        {
            shot.ToTable("graded_shots").HasKey(row => new { row.SessionKey, row.Number });
            shot.HasOne(row => row.Session).WithMany().HasForeignKey(row => row.SessionKey);
            shot.HasOne<BallRow>().WithMany().HasForeignKey(row => row.BallId);
        });
        modelBuilder.Entity<ShotTargetRow>(target =>
        {
            target.ToTable("shot_targets").HasKey(row => new { row.SessionKey, row.Number, row.Position });
            target.HasOne<GradedShotRow>().WithMany(row => row.Targets).HasForeignKey(row => new { row.SessionKey, row.Number });
        });
        foreach (var entity in modelBuilder.Model.GetEntityTypes())
        {
            foreach (var property in entity.GetProperties())
            {
                property.SetColumnName(WordStart().Replace(property.Name, "_$0").ToLowerInvariant());
            }

            foreach (var key in entity.GetForeignKeys())
            {
                // Nothing is ever taken out of the record, least of all as a consequence of something else.
                key.DeleteBehavior = DeleteBehavior.Restrict;
            }
        }
    }

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex WordStart();
}
