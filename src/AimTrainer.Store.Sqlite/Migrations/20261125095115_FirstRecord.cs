using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace AimTrainer.Store.Sqlite
{
    /// <inheritdoc />
    public partial class FirstRecord : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "bowlers",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    key = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_bowlers", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "drills",
                columns: table => new
                {
                    hash = table.Column<string>(type: "TEXT", nullable: false),
                    drill_id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_drills", x => x.hash);
                });

            migrationBuilder.CreateTable(
                name: "balls",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    bowler_id = table.Column<long>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    key = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_balls", x => x.id);
                    table.ForeignKey(
                        name: "FK_balls_bowlers_bowler_id",
                        column: x => x.bowler_id,
                        principalTable: "bowlers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sessions",
                columns: table => new
                {
                    key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    station = table.Column<int>(type: "INTEGER", nullable: false),
                    started_at = table.Column<DateTime>(type: "TEXT", nullable: false),
                    bowler_id = table.Column<long>(type: "INTEGER", nullable: false),
                    hand = table.Column<string>(type: "TEXT", nullable: false),
                    ball_id = table.Column<long>(type: "INTEGER", nullable: true),
                    drill_hash = table.Column<string>(type: "TEXT", nullable: false),
                    lane_name = table.Column<string>(type: "TEXT", nullable: false),
                    setup_json = table.Column<string>(type: "TEXT", nullable: false),
                    simulated = table.Column<bool>(type: "INTEGER", nullable: false),
                    ended_at = table.Column<DateTime>(type: "TEXT", nullable: true),
                    shots = table.Column<int>(type: "INTEGER", nullable: false),
                    points = table.Column<int>(type: "INTEGER", nullable: false),
                    run = table.Column<int>(type: "INTEGER", nullable: true),
                    block_name = table.Column<string>(type: "TEXT", nullable: true),
                    block_kind = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sessions", x => x.key);
                    table.ForeignKey(
                        name: "FK_sessions_balls_ball_id",
                        column: x => x.ball_id,
                        principalTable: "balls",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sessions_bowlers_bowler_id",
                        column: x => x.bowler_id,
                        principalTable: "bowlers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sessions_drills_drill_hash",
                        column: x => x.drill_hash,
                        principalTable: "drills",
                        principalColumn: "hash",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "graded_shots",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "INTEGER", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    ball_id = table.Column<long>(type: "INTEGER", nullable: true),
                    at = table.Column<DateTime>(type: "TEXT", nullable: false),
                    run = table.Column<int>(type: "INTEGER", nullable: false),
                    block_name = table.Column<string>(type: "TEXT", nullable: true),
                    block_kind = table.Column<string>(type: "TEXT", nullable: true),
                    aim = table.Column<string>(type: "TEXT", nullable: false),
                    place = table.Column<int>(type: "INTEGER", nullable: false),
                    held = table.Column<bool>(type: "INTEGER", nullable: true),
                    points = table.Column<int>(type: "INTEGER", nullable: false),
                    comparable = table.Column<bool>(type: "INTEGER", nullable: true),
                    void_reason = table.Column<string>(type: "TEXT", nullable: true),
                    simulated = table.Column<bool>(type: "INTEGER", nullable: false),
                    launch_angle_degrees = table.Column<double>(type: "REAL", nullable: true),
                    launch_angle_computed = table.Column<bool>(type: "INTEGER", nullable: true),
                    laydown_board = table.Column<double>(type: "REAL", nullable: true),
                    breakpoint_board = table.Column<double>(type: "REAL", nullable: true),
                    breakpoint_feet = table.Column<double>(type: "REAL", nullable: true),
                    entry_board = table.Column<double>(type: "REAL", nullable: true),
                    entry_angle_degrees = table.Column<double>(type: "REAL", nullable: true),
                    speed_mph = table.Column<double>(type: "REAL", nullable: true),
                    speed_at = table.Column<string>(type: "TEXT", nullable: true),
                    revs_rpm = table.Column<double>(type: "REAL", nullable: true),
                    axis_rotation_degrees = table.Column<double>(type: "REAL", nullable: true),
                    axis_tilt_degrees = table.Column<double>(type: "REAL", nullable: true),
                    pins = table.Column<int>(type: "INTEGER", nullable: true),
                    shot_json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_graded_shots", x => new { x.session_key, x.number });
                    table.ForeignKey(
                        name: "FK_graded_shots_balls_ball_id",
                        column: x => x.ball_id,
                        principalTable: "balls",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_graded_shots_sessions_session_key",
                        column: x => x.session_key,
                        principalTable: "sessions",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "log_steps",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "INTEGER", nullable: false),
                    sequence = table.Column<long>(type: "INTEGER", nullable: false),
                    at = table.Column<DateTime>(type: "TEXT", nullable: false),
                    input_json = table.Column<string>(type: "TEXT", nullable: false),
                    events_json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_log_steps", x => new { x.session_key, x.sequence });
                    table.ForeignKey(
                        name: "FK_log_steps_sessions_session_key",
                        column: x => x.session_key,
                        principalTable: "sessions",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "shot_targets",
                columns: table => new
                {
                    session_key = table.Column<long>(type: "INTEGER", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    position = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    distance_feet = table.Column<double>(type: "REAL", nullable: false),
                    centre_board = table.Column<double>(type: "REAL", nullable: false),
                    width_boards = table.Column<double>(type: "REAL", nullable: false),
                    crossing = table.Column<string>(type: "TEXT", nullable: false),
                    crossing_board = table.Column<double>(type: "REAL", nullable: true),
                    miss_boards = table.Column<double>(type: "REAL", nullable: true),
                    grade = table.Column<string>(type: "TEXT", nullable: true),
                    held = table.Column<bool>(type: "INTEGER", nullable: true),
                    points = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_shot_targets", x => new { x.session_key, x.number, x.position });
                    table.ForeignKey(
                        name: "FK_shot_targets_graded_shots_session_key_number",
                        columns: x => new { x.session_key, x.number },
                        principalTable: "graded_shots",
                        principalColumns: new[] { "session_key", "number" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_balls_bowler_id_key",
                table: "balls",
                columns: new[] { "bowler_id", "key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_bowlers_key",
                table: "bowlers",
                column: "key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sessions_bowler_id_started_at",
                table: "sessions",
                columns: new[] { "bowler_id", "started_at" });

            migrationBuilder.CreateIndex(
                name: "IX_sessions_id",
                table: "sessions",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sessions_started_at",
                table: "sessions",
                column: "started_at");

            migrationBuilder.CreateIndex(
                name: "IX_sessions_station_started_at",
                table: "sessions",
                columns: new[] { "station", "started_at" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "log_steps");

            migrationBuilder.DropTable(
                name: "shot_targets");

            migrationBuilder.DropTable(
                name: "graded_shots");

            migrationBuilder.DropTable(
                name: "sessions");

            migrationBuilder.DropTable(
                name: "balls");

            migrationBuilder.DropTable(
                name: "drills");

            migrationBuilder.DropTable(
                name: "bowlers");
        }
    }
}
