using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace AimTrainer.Store.Postgres
{
    /// <inheritdoc />
    public partial class FirstTables : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.EnsureSchema(
                name: "aimtrainer");

            migrationBuilder.CreateTable(
                name: "bowlers",
                schema: "aimtrainer",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    key = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_bowlers", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "drills",
                schema: "aimtrainer",
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
                name: "balls",
                schema: "aimtrainer",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    bowler_id = table.Column<long>(type: "bigint", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    key = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    surface = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    weight_pounds = table.Column<double>(type: "double precision", nullable: true),
                    gyration_inches = table.Column<double>(type: "double precision", nullable: true),
                    differential_inches = table.Column<double>(type: "double precision", nullable: true),
                    layout = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    games_since_surface_work = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_balls", x => x.id);
                    table.ForeignKey(
                        name: "FK_balls_bowlers_bowler_id",
                        column: x => x.bowler_id,
                        principalSchema: "aimtrainer",
                        principalTable: "bowlers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ball_surfaces",
                schema: "aimtrainer",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    ball_id = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    finish = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    roughness = table.Column<double>(type: "double precision", nullable: true),
                    roughness_unit = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    games = table.Column<int>(type: "integer", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ball_surfaces", x => x.id);
                    table.ForeignKey(
                        name: "FK_ball_surfaces_balls_ball_id",
                        column: x => x.ball_id,
                        principalSchema: "aimtrainer",
                        principalTable: "balls",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sessions",
                schema: "aimtrainer",
                columns: table => new
                {
                    key = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    station = table.Column<int>(type: "integer", nullable: false),
                    started_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    bowler_id = table.Column<long>(type: "bigint", nullable: false),
                    hand = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ball_id = table.Column<long>(type: "bigint", nullable: true),
                    drill_hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    lane_name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    setup_json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    simulated = table.Column<bool>(type: "boolean", nullable: false),
                    ended_at = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    shots = table.Column<int>(type: "integer", nullable: false),
                    points = table.Column<int>(type: "integer", nullable: false),
                    run = table.Column<int>(type: "integer", nullable: true),
                    block_name = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    block_kind = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sessions", x => x.key);
                    table.ForeignKey(
                        name: "FK_sessions_balls_ball_id",
                        column: x => x.ball_id,
                        principalSchema: "aimtrainer",
                        principalTable: "balls",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sessions_bowlers_bowler_id",
                        column: x => x.bowler_id,
                        principalSchema: "aimtrainer",
                        principalTable: "bowlers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sessions_drills_drill_hash",
                        column: x => x.drill_hash,
                        principalSchema: "aimtrainer",
                        principalTable: "drills",
                        principalColumn: "hash",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "graded_shots",
                schema: "aimtrainer",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "bigint", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    ball_id = table.Column<long>(type: "bigint", nullable: true),
                    at = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    run = table.Column<int>(type: "integer", nullable: false),
                    block_name = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    block_kind = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    aim = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    place = table.Column<int>(type: "integer", nullable: false),
                    held = table.Column<bool>(type: "boolean", nullable: true),
                    points = table.Column<int>(type: "integer", nullable: false),
                    comparable = table.Column<bool>(type: "boolean", nullable: true),
                    void_reason = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    simulated = table.Column<bool>(type: "boolean", nullable: false),
                    launch_angle_degrees = table.Column<double>(type: "double precision", nullable: true),
                    launch_angle_computed = table.Column<bool>(type: "boolean", nullable: true),
                    laydown_board = table.Column<double>(type: "double precision", nullable: true),
                    breakpoint_board = table.Column<double>(type: "double precision", nullable: true),
                    breakpoint_feet = table.Column<double>(type: "double precision", nullable: true),
                    entry_board = table.Column<double>(type: "double precision", nullable: true),
                    entry_angle_degrees = table.Column<double>(type: "double precision", nullable: true),
                    speed_mph = table.Column<double>(type: "double precision", nullable: true),
                    speed_at = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    revs_rpm = table.Column<double>(type: "double precision", nullable: true),
                    axis_rotation_degrees = table.Column<double>(type: "double precision", nullable: true),
                    axis_tilt_degrees = table.Column<double>(type: "double precision", nullable: true),
                    pins = table.Column<int>(type: "integer", nullable: true),
                    shot_json = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_graded_shots", x => new { x.session_key, x.number });
                    table.ForeignKey(
                        name: "FK_graded_shots_balls_ball_id",
                        column: x => x.ball_id,
                        principalSchema: "aimtrainer",
                        principalTable: "balls",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_graded_shots_sessions_session_key",
                        column: x => x.session_key,
                        principalSchema: "aimtrainer",
                        principalTable: "sessions",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "log_steps",
                schema: "aimtrainer",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "bigint", nullable: false),
                    sequence = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    input_json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    events_json = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_log_steps", x => new { x.session_key, x.sequence });
                    table.ForeignKey(
                        name: "FK_log_steps_sessions_session_key",
                        column: x => x.session_key,
                        principalSchema: "aimtrainer",
                        principalTable: "sessions",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "shot_targets",
                schema: "aimtrainer",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "bigint", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    distance_feet = table.Column<double>(type: "double precision", nullable: false),
                    centre_board = table.Column<double>(type: "double precision", nullable: false),
                    width_boards = table.Column<double>(type: "double precision", nullable: false),
                    crossing = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    crossing_board = table.Column<double>(type: "double precision", nullable: true),
                    miss_boards = table.Column<double>(type: "double precision", nullable: true),
                    grade = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    held = table.Column<bool>(type: "boolean", nullable: true),
                    points = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_shot_targets", x => new { x.session_key, x.number, x.position });
                    table.ForeignKey(
                        name: "FK_shot_targets_graded_shots_session_key_number",
                        columns: x => new { x.session_key, x.number },
                        principalSchema: "aimtrainer",
                        principalTable: "graded_shots",
                        principalColumns: new[] { "session_key", "number" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ball_surfaces_ball_id_at",
                schema: "aimtrainer",
                table: "ball_surfaces",
                columns: new[] { "ball_id", "at" });

            migrationBuilder.CreateIndex(
                name: "IX_balls_bowler_id_key",
                schema: "aimtrainer",
                table: "balls",
                columns: new[] { "bowler_id", "key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_bowlers_key",
                schema: "aimtrainer",
                table: "bowlers",
                column: "key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sessions_bowler_id_started_at",
                schema: "aimtrainer",
                table: "sessions",
                columns: new[] { "bowler_id", "started_at" });

            migrationBuilder.CreateIndex(
                name: "IX_sessions_id",
                schema: "aimtrainer",
                table: "sessions",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sessions_started_at",
                schema: "aimtrainer",
                table: "sessions",
                column: "started_at");

            migrationBuilder.CreateIndex(
                name: "IX_sessions_station_started_at",
                schema: "aimtrainer",
                table: "sessions",
                columns: new[] { "station", "started_at" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ball_surfaces",
                schema: "aimtrainer");

            migrationBuilder.DropTable(
                name: "log_steps",
                schema: "aimtrainer");

            migrationBuilder.DropTable(
                name: "shot_targets",
                schema: "aimtrainer");

            migrationBuilder.DropTable(
                name: "graded_shots",
                schema: "aimtrainer");

            migrationBuilder.DropTable(
                name: "sessions",
                schema: "aimtrainer");

            migrationBuilder.DropTable(
                name: "balls",
                schema: "aimtrainer");

            migrationBuilder.DropTable(
                name: "drills",
                schema: "aimtrainer");

            migrationBuilder.DropTable(
                name: "bowlers",
                schema: "aimtrainer");
        }
    }
}
