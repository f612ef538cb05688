using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace AimTrainer.Store.Postgres
{
    /// <inheritdoc />
    public partial class FirstChain : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.EnsureSchema(
                name: "chain");

            migrationBuilder.CreateTable(
                name: "centers",
                schema: "chain",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    token_hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    added_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    revoked_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    heard_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_centers", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "drills",
                schema: "chain",
                columns: table => new
                {
                    hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    drill_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    json = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_drills", x => x.hash);
                });

            migrationBuilder.CreateTable(
                name: "people",
                schema: "chain",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_people", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "erased_sessions",
                schema: "chain",
                columns: table => new
                {
                    center_id = table.Column<int>(type: "integer", nullable: false),
                    session_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    asked_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    center_done_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_erased_sessions", x => new { x.center_id, x.session_id });
                    table.ForeignKey(
                        name: "FK_erased_sessions_centers_center_id",
                        column: x => x.center_id,
                        principalSchema: "chain",
                        principalTable: "centers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "bowlers",
                schema: "chain",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    center_id = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    key = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    person_id = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_bowlers", x => x.id);
                    table.ForeignKey(
                        name: "FK_bowlers_centers_center_id",
                        column: x => x.center_id,
                        principalSchema: "chain",
                        principalTable: "centers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_bowlers_people_person_id",
                        column: x => x.person_id,
                        principalSchema: "chain",
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sessions",
                schema: "chain",
                columns: table => new
                {
                    key = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    center_id = table.Column<int>(type: "integer", nullable: false),
                    id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    station = table.Column<int>(type: "integer", nullable: false),
                    started_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    bowler_id = table.Column<long>(type: "bigint", nullable: false),
                    hand = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    drill_hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    lane_name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    setup_json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    simulated = table.Column<bool>(type: "boolean", nullable: false),
                    ended_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    last_sequence = table.Column<long>(type: "bigint", nullable: false),
                    shots = table.Column<int>(type: "integer", nullable: false),
                    points = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sessions", x => x.key);
                    table.ForeignKey(
                        name: "FK_sessions_bowlers_bowler_id",
                        column: x => x.bowler_id,
                        principalSchema: "chain",
                        principalTable: "bowlers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sessions_centers_center_id",
                        column: x => x.center_id,
                        principalSchema: "chain",
                        principalTable: "centers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sessions_drills_drill_hash",
                        column: x => x.drill_hash,
                        principalSchema: "chain",
                        principalTable: "drills",
                        principalColumn: "hash",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "blocks",
                schema: "chain",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "bigint", nullable: false),
                    run = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    kind = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_blocks", x => new { x.session_key, x.run });
                    table.ForeignKey(
                        name: "FK_blocks_sessions_session_key",
                        column: x => x.session_key,
                        principalSchema: "chain",
                        principalTable: "sessions",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sums",
                schema: "chain",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "bigint", nullable: false),
                    run = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    distance_feet = table.Column<double>(type: "double precision", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    shots = table.Column<int>(type: "integer", nullable: false),
                    graded = table.Column<int>(type: "integer", nullable: false),
                    held = table.Column<int>(type: "integer", nullable: false),
                    sum_of_misses = table.Column<double>(type: "double precision", nullable: false),
                    sum_of_sizes = table.Column<double>(type: "double precision", nullable: false),
                    sum_of_squares = table.Column<double>(type: "double precision", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sums", x => new { x.session_key, x.run, x.name, x.distance_feet });
                    table.ForeignKey(
                        name: "FK_sums_sessions_session_key",
                        column: x => x.session_key,
                        principalSchema: "chain",
                        principalTable: "sessions",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_bowlers_center_id_key",
                schema: "chain",
                table: "bowlers",
                columns: new[] { "center_id", "key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_bowlers_person_id",
                schema: "chain",
                table: "bowlers",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "IX_centers_name",
                schema: "chain",
                table: "centers",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_centers_token_hash",
                schema: "chain",
                table: "centers",
                column: "token_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_drills_drill_id",
                schema: "chain",
                table: "drills",
                column: "drill_id");

            migrationBuilder.CreateIndex(
                name: "IX_erased_sessions_waiting",
                schema: "chain",
                table: "erased_sessions",
                column: "center_id",
                filter: "center_done_at IS NULL");

            migrationBuilder.CreateIndex(
                name: "IX_people_name",
                schema: "chain",
                table: "people",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sessions_bowler_id_started_at",
                schema: "chain",
                table: "sessions",
                columns: new[] { "bowler_id", "started_at" })
                .Annotation("Npgsql:IndexInclude", new[] { "simulated" });

            migrationBuilder.CreateIndex(
                name: "IX_sessions_center_id_id",
                schema: "chain",
                table: "sessions",
                columns: new[] { "center_id", "id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sessions_drill_hash_started_at",
                schema: "chain",
                table: "sessions",
                columns: new[] { "drill_hash", "started_at" });

            // By hand: tables in parts by month, of which EF knows nothing. The parts are made as their months come (ChainMonths).
            migrationBuilder.Sql(
                """
                CREATE TABLE chain.log_steps (
                    started_at timestamptz NOT NULL,
                    session_key bigint NOT NULL,
                    sequence bigint NOT NULL,
                    at timestamptz NOT NULL,
                    input_json text COLLATE "C" NOT NULL,
                    events_json text COLLATE "C" NOT NULL,
                    PRIMARY KEY (started_at, session_key, sequence)
                ) PARTITION BY RANGE (started_at);
                CREATE TABLE chain.log_steps_other PARTITION OF chain.log_steps DEFAULT;
                CREATE TABLE chain.crossings (
                    started_at timestamptz NOT NULL,
                    session_key bigint NOT NULL,
                    number integer NOT NULL,
                    position integer NOT NULL,
                    run integer NOT NULL,
                    distance_feet double precision NOT NULL,
                    centre_board double precision NOT NULL,
                    width_boards double precision NOT NULL,
                    crossing_board double precision,
                    miss_boards double precision,
                    points integer,
                    held boolean,
                    counts boolean NOT NULL,
                    name text COLLATE "C" NOT NULL,
                    PRIMARY KEY (started_at, session_key, number, position)
                ) PARTITION BY RANGE (started_at);
                CREATE TABLE chain.crossings_other PARTITION OF chain.crossings DEFAULT;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TABLE chain.crossings; DROP TABLE chain.log_steps");

            migrationBuilder.DropTable(
                name: "blocks",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "erased_sessions",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "sums",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "sessions",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "bowlers",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "drills",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "centers",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "people",
                schema: "chain");
        }
    }
}
