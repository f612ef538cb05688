using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Conventions;

namespace AimTrainer.Store.Postgres;

/// <summary>The tables of a chain. Those in parts by month are made by SQL in the migrations: EF has no word for parts.</summary>
/// <param name="options">Which database.</param>
public sealed partial class ChainContext(DbContextOptions<ChainContext> options) : DbContext(options)
{
    /// <summary>The chain's schema.</summary>
    public const string Schema = "chain";

    /// <summary>Centers.</summary>
    public DbSet<CenterRow> Centers => Set<CenterRow>();

    /// <summary>People.</summary>
    public DbSet<PersonRow> People => Set<PersonRow>();

    /// <summary>Bowlers of centers.</summary>
    public DbSet<ChainBowlerRow> Bowlers => Set<ChainBowlerRow>();

    /// <summary>Drills.</summary>
    public DbSet<ChainDrillRow> Drills => Set<ChainDrillRow>();

    /// <summary>Sessions.</summary>
    public DbSet<ChainSessionRow> Sessions => Set<ChainSessionRow>();

    /// <summary>Steps, in parts by month.</summary>
    public DbSet<ChainStepRow> LogSteps => Set<ChainStepRow>();

    /// <summary>Crossings, in parts by month.</summary>
    public DbSet<CrossingRow> Crossings => Set<CrossingRow>();

    /// <summary>Blocks as they were thrown.</summary>
    public DbSet<ChainBlockRow> Blocks => Set<ChainBlockRow>();

    /// <summary>Sums.</summary>
    public DbSet<SumRow> Sums => Set<SumRow>();

    /// <summary>Sessions that were erased.</summary>
    public DbSet<ErasedSessionRow> ErasedSessions => Set<ErasedSessionRow>();

    /// <summary>Groups that follow a program.</summary>
    public DbSet<ChainGroupRow> Groups => Set<ChainGroupRow>();

    /// <summary>Who is in them.</summary>
    public DbSet<EnrolmentRow> Enrolments => Set<EnrolmentRow>();

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Conventions.Remove<ForeignKeyIndexConvention>();
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTime>();
        configurationBuilder.Properties<string>().UseCollation("C");
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.HasDefaultSchema(Schema);
        modelBuilder.Entity<CenterRow>(center =>
        {
            center.ToTable("centers").HasKey(row => row.Id);
            center.HasIndex(row => row.Name).IsUnique();
            center.HasIndex(row => row.TokenHash).IsUnique();
        });
        modelBuilder.Entity<PersonRow>(person =>
        {
            person.ToTable("people").HasKey(row => row.Id);
            person.HasIndex(row => row.Name).IsUnique();
        });
        modelBuilder.Entity<ChainBowlerRow>(bowler =>
        {
            bowler.ToTable("bowlers").HasKey(row => row.Id);
            bowler.HasIndex(row => new { row.CenterId, row.Key }).IsUnique();
            bowler.HasIndex(row => row.PersonId);
            bowler.HasOne<CenterRow>().WithMany().HasForeignKey(row => row.CenterId);
            bowler.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.PersonId);
        });
        modelBuilder.Entity<ChainDrillRow>(drill =>
        {
            drill.ToTable("drills").HasKey(row => row.Hash);
            drill.HasIndex(row => row.DrillId);
        });
        modelBuilder.Entity<ChainSessionRow>(session =>
        {
            session.ToTable("sessions").HasKey(row => row.Key);
            session.HasIndex(row => new { row.CenterId, row.Id }).IsUnique();

            // With what the cohorts ask for: they read the index alone, and not the setups beside the times.
            session.HasIndex(row => new { row.BowlerId, row.StartedAt }).IncludeProperties(row => row.Simulated);
            session.HasIndex(row => new { row.DrillHash, row.StartedAt });
            session.HasOne<CenterRow>().WithMany().HasForeignKey(row => row.CenterId);
            session.HasOne<ChainBowlerRow>().WithMany().HasForeignKey(row => row.BowlerId);
            session.HasOne<ChainDrillRow>().WithMany().HasForeignKey(row => row.DrillHash);
        });
        modelBuilder.Entity<ChainStepRow>(step =>
            step.ToTable("log_steps", table => table.ExcludeFromMigrations()).HasKey(row => new { row.StartedAt, row.SessionKey, row.Sequence }));
        modelBuilder.Entity<CrossingRow>(crossing =>
            crossing.ToTable("crossings", table => table.ExcludeFromMigrations()).HasKey(row => new { row.StartedAt, row.SessionKey, row.Number, row.Position }));
        modelBuilder.Entity<ChainBlockRow>(block =>
        {
            block.ToTable("blocks").HasKey(row => new { row.SessionKey, row.Run });
            block.HasOne<ChainSessionRow>().WithMany().HasForeignKey(row => row.SessionKey);
        });
        modelBuilder.Entity<SumRow>(sum =>
        {
            sum.ToTable("sums").HasKey(row => new { row.SessionKey, row.Run, row.Name, row.DistanceFeet });
            sum.HasOne<ChainSessionRow>().WithMany().HasForeignKey(row => row.SessionKey);
        });
        modelBuilder.Entity<ErasedSessionRow>(erased =>
        {
            erased.ToTable("erased_sessions").HasKey(row => new { row.CenterId, row.SessionId });
            erased.HasIndex(row => row.CenterId).HasFilter("center_done_at IS NULL").HasDatabaseName("IX_erased_sessions_waiting");
            erased.HasOne<CenterRow>().WithMany().HasForeignKey(row => row.CenterId);
        });
        modelBuilder.Entity<ChainGroupRow>(group =>
        {
            group.ToTable("groups").HasKey(row => new { row.CenterId, row.Id, row.Starts });
            group.HasIndex(row => new { row.ProgramId, row.Starts });
            group.HasOne<CenterRow>().WithMany().HasForeignKey(row => row.CenterId);
        });
        modelBuilder.Entity<EnrolmentRow>(enrolment =>
        {
            enrolment.ToTable("enrolments").HasKey(row => new { row.CenterId, row.GroupId, row.GroupStarts, row.BowlerId });
            enrolment.HasIndex(row => row.BowlerId);
            enrolment.HasOne<ChainGroupRow>().WithMany().HasForeignKey(row => new { row.CenterId, row.GroupId, row.GroupStarts });
            enrolment.HasOne<ChainBowlerRow>().WithMany().HasForeignKey(row => row.BowlerId);
        });
        foreach (var entity in modelBuilder.Model.GetEntityTypes())
        {
            foreach (var property in entity.GetProperties())
            {
                property.SetColumnName(WordStart().Replace(property.Name, "_$0").ToLowerInvariant());
            }

            foreach (var key in entity.GetForeignKeys())
            {
                // That somebody is in a group is nothing by itself: whoever erases the bowler erases it.
                key.DeleteBehavior = entity.ClrType == typeof(EnrolmentRow) ? DeleteBehavior.Cascade : DeleteBehavior.Restrict;
            }
        }
    }

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex WordStart();
}
